// SPDX-License-Identifier: MIT
#include "desk/floor_drag.hpp"

#include "desk/session.hpp"
#include "headless.hpp"
#include "room/rows.hpp"
#include "support/check.hpp"

#include <GLFW/glfw3.h>
#include <doctest/doctest.h>

#include <optional>

namespace rakeline::desk {
namespace {

/// Where in the strip a handle of this kind lies, found by moving the pointer over it.
std::optional<ImVec2> find_handle(Headless& headless, Session& session, HandleOf of, int index) {
    headless.frame(session);
    for (float x = 386.0f; x < 1000.0f; x += 8.0f) {
        for (float y = 486.0f; y < 680.0f; y += 8.0f) {
            headless.mouse(x, y);
            headless.frame(session);
            const auto& hovered = session.workspace().floor.hovered;
            if (hovered && hovered->of == of && hovered->index == index) return ImVec2{x, y};
        }
    }
    return {};
}

/// A session on a demo room whose stalls stand on steps.
struct Dragging {
    explicit Dragging(const std::string& name) : session(quiet_options(demo(name))) {
        room::Layout layout = session.document().current()->layout;
        layout.seating.front().floor = room::BlockFloor::stepped;
        layout.seating.front().riser_m = 0.12;
        session.edit({"Steps", layout, {}});
        session.wait_for_study();
    }
    void move(ImVec2 at, bool down) {
        headless.mouse(at.x, at.y, down);
        headless.frame(session);
    }

    Headless headless;
    Session session;
};

}  // namespace

TEST_SUITE_BEGIN("desk/floor_drag");

TEST_CASE("a drag on a row's handle is one step of undo, and undo brings the room back") {
    Dragging d("converted-hall-96");
    const auto at = find_handle(d.headless, d.session, HandleOf::row, 3);
    REQUIRE(at.has_value());
    const room::Brief before = *d.session.document().current();
    const std::size_t steps = d.session.document().history().size();
    for (int i = 0; i <= 30; ++i)
        d.move({at->x, at->y - static_cast<float>(i)}, true);
    d.move({at->x, at->y - 30.0f}, false);
    CHECK(d.session.document().history().size() == steps + 1);
    CHECK(d.session.document().history().undo_label() == "Drag row D");
    const room::SeatBlock& block = d.session.document().current()->layout.seating.front();
    CHECK(block.floor == room::BlockFloor::flights);
    CHECK(block.flights.size() == 3);
    d.session.act(Action::undo);
    CHECK(*d.session.document().current() == before);
}

TEST_CASE("Escape while a handle is dragged puts the room back and leaves no step") {
    Dragging d("converted-hall-96");
    const auto at = find_handle(d.headless, d.session, HandleOf::row, 3);
    REQUIRE(at.has_value());
    const room::Brief before = *d.session.document().current();
    const std::size_t steps = d.session.document().history().size();
    for (int i = 0; i <= 20; ++i)
        d.move({at->x, at->y - static_cast<float>(i)}, true);
    CHECK(*d.session.document().current() != before);
    d.session.press_key({GLFW_KEY_ESCAPE, false, false});
    d.move({at->x, at->y - 20.0f}, true);
    const DrawingLook look = d.session.workspace().look;
    d.move({at->x, at->y - 40.0f}, true);
    d.move({at->x, at->y - 40.0f}, false);
    CHECK(*d.session.document().current() == before);
    CHECK(d.session.document().history().size() == steps);
    CHECK(d.session.workspace().look.offset == look.offset);
}

TEST_CASE("a press on a handle that does not move selects the row and edits nothing") {
    Dragging d("converted-hall-96");
    const auto at = find_handle(d.headless, d.session, HandleOf::row, 2);
    REQUIRE(at.has_value());
    const std::size_t steps = d.session.document().history().size();
    d.move(*at, true);
    d.move(*at, true);
    d.move(*at, false);
    CHECK(d.session.document().history().size() == steps);
    CHECK(d.session.workspace().selected == drawing::Shows{drawing::Shows::Kind::row, 2});
}

TEST_CASE("a double click on a handle opens its number to be typed") {
    Dragging d("converted-hall-96");
    ImGui::GetIO().KeyMap[ImGuiKey_Enter] = GLFW_KEY_ENTER;
    const auto at = find_handle(d.headless, d.session, HandleOf::row, 3);
    REQUIRE(at.has_value());
    for (const bool down : {true, false, true, false, false})
        d.move(*at, down);
    REQUIRE(d.session.workspace().floor.typed.has_value());
    for (int i = 0; i < 3; ++i)
        d.move(*at, false);
    d.session.workspace().number.text = "250 mm";
    ImGui::GetIO().AddInputCharactersUTF8("250 mm");
    d.move(*at, false);
    for (const bool down : {true, false, false}) {
        ImGui::GetIO().KeysDown[GLFW_KEY_ENTER] = down;
        d.move(*at, false);
    }
    const room::SeatBlock& block = d.session.document().current()->layout.seating.front();
    REQUIRE(block.flights.size() == 3);
    tests::check_close(block.flights[1].riser_m, 0.25,
                       tests::absolute(1e-9, "flights are kept to a picometre"));
    CHECK_FALSE(d.session.workspace().floor.typed.has_value());
}

TEST_CASE("the handles shown are those of the block whose row or seat is selected") {
    Dragging d("grand-620");
    const auto& rows = d.session.study()->seats.rows;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        d.session.workspace().selected = {drawing::Shows::Kind::row, static_cast<int>(i)};
        d.headless.frame(d.session);
        CHECK(d.session.workspace().floor.block == rows[i].block);
    }
}

TEST_CASE("through a drag in a large room, numbers that count as current are those of the brief") {
    Dragging d("grand-620");
    const auto at = find_handle(d.headless, d.session, HandleOf::row, 5);
    REQUIRE(at.has_value());
    int current = 0;
    std::optional<study::Study> scratch;
    for (int i = 0; i <= 60; ++i) {
        if (i % 10 == 9) d.session.wait_for_study();
        d.session.take_study();
        const auto study = d.session.study();
        // The window shows numbers in their own ink only where this holds: PanelInput::current.
        if (study->brief == d.session.document().current()) {
            ++current;
            if (i % 20 == 19) {
                scratch = study::compute_study(d.session.document().current());
                CHECK(study->figures == scratch->figures);
                CHECK(study->findings == scratch->findings);
            }
        }
        d.move({at->x, at->y - 0.5f * static_cast<float>(i)}, true);
    }
    CHECK(current >= 6);
    CHECK(scratch.has_value());
    d.move({at->x, at->y - 30.0f}, false);
    d.session.wait_for_study();
    CHECK(d.session.study()->brief == d.session.document().current());
}

TEST_SUITE_END();

}  // namespace rakeline::desk
