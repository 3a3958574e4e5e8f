// SPDX-License-Identifier: MIT
#include "sight/blockers.hpp"

#include "support/check.hpp"

using namespace rakeline;
using tests::absolute;
using tests::check_close;

namespace {

room::SeatPlanInput stalls_and_balcony() {
    room::SeatPlanInput in;
    in.hall.length_m = 25.0;
    room::SeatBlock stalls;
    stalls.rows = 12;
    stalls.wheelchair_places = {{"A", 1}};
    room::SeatBlock balcony;
    balcony.name = "balcony";
    balcony.first_row = "N";
    balcony.rows = 4;
    balcony.first_row_back_m = 12.0;
    balcony.first_row_up_m = 4.0;
    balcony.riser_m = 0.4;
    balcony.front_wall_m = 0.8;
    balcony.raised = true;
    in.seating = {stalls, balcony};
    return in;
}

}  // namespace

TEST_SUITE("sight/blockers") {
    TEST_CASE("every seat has a head at its eye, and a back unless it is a wheelchair place") {
        const auto in = stalls_and_balcony();
        const auto plan = room::place_seats(in);
        const auto all = sight::full_house(plan, in.seating, in.audience);
        REQUIRE(all.heads.size() == plan.seats.size());
        for (std::size_t i = 0; i < plan.seats.size(); ++i) {
            CHECK(all.heads[i].centre == plan.seats[i].eye);
            CHECK(all.heads[i].eye == static_cast<int>(i));
        }
        // One back less than seats; two edges of the balcony's front; its underside.
        CHECK(all.walls.size() == plan.seats.size() - 1 + 3);
        const sight::Wall& back = all.walls.front();
        CHECK(back.eye == 1);
        check_close(glm::length(back.to - back.from), 0.9 * in.seating[0].seat_pitch_m,
                    absolute(1e-12, "rounding"));
        check_close(back.from.y, in.seating[0].seat_back_m, absolute(1e-12, "rounding"));
        CHECK(back.from.x < back.to.x);
    }

    TEST_CASE(
        "the balcony hides the picture's top from those far beneath it, and from no one else") {
        const auto in = stalls_and_balcony();
        const auto plan = room::place_seats(in);
        auto all = sight::full_house(plan, in.seating, in.audience);
        all.heads.clear();
        std::vector<glm::dvec3> eyes;
        for (const auto& seat : plan.seats)
            eyes.push_back(seat.eye);
        picture::Opening opening;
        opening.uv = {-5.0, 5.0, -2.0, 2.0};
        const auto surface = geometry::standing_patch({0.0, 5.0, 1.0}, 0.0, 0.0);
        const auto seats =
            sight::hidden_picture({surface, opening, eyes, all.heads, all.walls}, {64, 1});
        const auto first = static_cast<std::size_t>(plan.rows[0].first_seat);
        CHECK(seats[first].hidden_fraction == 0.0);
        // Row L, the last of the stalls, 17.1 m back: the edge near 11.5 m back and 4 m up cuts its
        // view at 4 + (4 - eye) / 5.6 x 10.5 = about 5 m up, the picture's middle.
        const auto last = static_cast<std::size_t>(plan.rows[11].first_seat + 6);
        CHECK(seats[last].hidden_fraction > 0.2);
        CHECK(seats[last].clear_above_m > 3.99);
        const auto up = static_cast<std::size_t>(plan.rows[13].first_seat + 6);
        CHECK(seats[up].hidden_fraction < 0.05);
    }
}
