// SPDX-License-Identifier: MIT
#include "desk/seat_steps.hpp"

#include "headless.hpp"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

namespace rakeline::desk {
namespace {

using Kind = drawing::Shows::Kind;

/// A session, and the frames that key presses make.
struct Room {
    explicit Room(const char* name) : session(quiet_options(demo(name))) {
        session.wait_for_study();
        headless.frame(session);
    }
    void press(int key) {
        session.press_key({key, false, false});
        headless.frame(session);
    }
    Workspace& w() { return session.workspace(); }

    Headless headless;
    Session session;
};

int called(const room::SeatPlan& plan, const char* name) {
    return room::find_seat(plan, name).value();
}

room::SeatPlan plan_of(const char* name) {
    auto brief = study::open_room(demo(name), base::read_text_file);
    REQUIRE(brief);
    const room::Layout& layout = brief->layout;
    return room::place_seats({layout.hall, layout.screen, layout.seating, layout.audience});
}

}  // namespace

TEST_SUITE("desk/seat_steps") {
    TEST_CASE("beside, in front and behind are what one who faces the screen calls so") {
        const room::SeatPlan plan = plan_of("screening-24");
        const int c3 = called(plan, "C3");
        CHECK(seat_beside(plan, c3, SeatStep::left) == called(plan, "C2"));
        CHECK(seat_beside(plan, c3, SeatStep::right) == called(plan, "C4"));
        const auto front = seat_beside(plan, c3, SeatStep::front);
        REQUIRE(front);
        CHECK(plan.seats[static_cast<std::size_t>(*front)].name[0] == 'B');
        const auto behind = seat_beside(plan, c3, SeatStep::behind);
        REQUIRE(behind);
        CHECK(plan.seats[static_cast<std::size_t>(*behind)].name[0] == 'D');
        CHECK_FALSE(seat_beside(plan, called(plan, "C1"), SeatStep::left));
        CHECK_FALSE(seat_beside(plan, called(plan, "A2"), SeatStep::front));
    }

    TEST_CASE("property: steps to the screen come to the first row, each nearer than the last") {
        for (const char* name : {"screening-24", "converted-hall-96", "steep-240", "grand-620"}) {
            const room::SeatPlan plan = plan_of(name);
            for (std::size_t start = 0; start < plan.seats.size(); start += 7) {
                int seat = static_cast<int>(start);
                std::size_t steps = 0;
                while (const auto next = seat_beside(plan, seat, SeatStep::front)) {
                    CHECK(plan.seats[static_cast<std::size_t>(*next)].floor.z <
                          plan.seats[static_cast<std::size_t>(seat)].floor.z);
                    seat = *next;
                    REQUIRE(++steps < plan.rows.size());
                }
            }
        }
    }

    TEST_CASE(
        "arrow keys lead from seat to seat, and to the reference seat where none is selected") {
        Room room("screening-24");
        room.press(GLFW_KEY_LEFT);
        REQUIRE(room.w().selected.kind == Kind::seat);
        const int first = room.w().selected.index;
        const auto plan = plan_of("screening-24");
        CHECK(first == room.session.study()->reference_seat);
        room.press(GLFW_KEY_DOWN);
        CHECK(room.w().selected.index ==
              seat_beside(plan, first, SeatStep::behind).value_or(first));
        for (int i = 0; i < 20; ++i)
            room.press(GLFW_KEY_RIGHT);
        CHECK_FALSE(seat_beside(plan, room.w().selected.index, SeatStep::right));
    }

    TEST_CASE("E sits down in a seat, Escape shows the hall again and keeps the seat") {
        Room room("screening-24");
        room.press(GLFW_KEY_E);
        CHECK(room.w().from_seat);
        CHECK(room.w().selected.kind == Kind::seat);
        room.press(GLFW_KEY_ESCAPE);
        CHECK_FALSE(room.w().from_seat);
        CHECK(room.w().selected.kind == Kind::seat);
        room.press(GLFW_KEY_ESCAPE);
        CHECK(room.w().selected.kind == Kind::nothing);
    }

    TEST_CASE("the drawing from the seat follows the selection and the format") {
        Room room("converted-hall-96");
        room.w().strip = StripDrawing::seat;
        room.headless.frame(room.session);
        CHECK(room.w().drawing_cache.drawing == nullptr);
        REQUIRE_FALSE(room.w().drawing_cache.refused.empty());
        CHECK(room.w().drawing_cache.refused[0].what == "no seat is chosen");
        room.w().selected = {Kind::seat, 40};
        room.headless.frame(room.session);
        const auto first = room.w().drawing_cache.drawing;
        REQUIRE(first);
        room.w().selected.index = 41;
        room.headless.frame(room.session);
        const auto second = room.w().drawing_cache.drawing;
        REQUIRE(second);
        CHECK(second->title != first->title);
        room.w().format = 1;
        room.headless.frame(room.session);
        CHECK(room.w().drawing_cache.drawing != second);
    }
}

}  // namespace rakeline::desk
