// SPDX-License-Identifier: MIT
#include "sight/standing.hpp"

#include "sight/random_seats.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

const auto kRounding = absolute(1e-9, "rounding, and the foot on a curved edge found by halving");

struct Standing {
    std::vector<room::CrossAisleLine> aisles;
    std::vector<std::optional<sight::OverStanding>> rows;
    std::vector<std::optional<double>> hidden;
};

Standing standing_in(const SeatsRoom& room, const room::Audience& audience) {
    Standing out;
    out.aisles = room::cross_aisle_lines(room.in, sight::standing_pitch(audience));
    const auto& p = room.picture;
    out.rows = sight::over_standing(p.surface, p.opening, room.plan, out.aisles, audience);
    const auto house = sight::full_house(room.plan, room.in.seating, audience);
    out.hidden =
        sight::hidden_standing(p.surface, p.opening, room.plan, out.aisles, house, audience);
    return out;
}

std::vector<sight::SeatHidden> seated(const SeatsRoom& room, const room::Audience& audience) {
    std::vector<glm::dvec3> eyes;
    for (const room::Seat& seat : room.plan.seats)
        eyes.push_back(seat.eye);
    const auto house = sight::full_house(room.plan, room.in.seating, audience);
    return sight::hidden_picture(
        {room.picture.surface, room.picture.opening, eyes, house.heads, house.walls});
}

}  // namespace

TEST_SUITE("sight/standing") {
    TEST_CASE("a row behind a cross aisle sees over the crown by hand") {
        // Rows 1.00 m apart from 5.00 m, an aisle of 1.40 m behind row B: the tread of B ends 0.30
        // m behind its eyes, so the aisle's middle is at 5.00 + 1.00 + 0.30 + 0.70 = 7.00 m, on B's
        // floor, 0.50 m. A stature of 1.75 m brings the crown to 2.25 m. Row C is at 5.00 + 2.00 +
        // 1.40 = 8.40 m, floor 1.00 m, eye 2.20 m. The picture's lower edge is at 1.00 m before the
        // wall: the line is 2.20 - 1.20 x 1.40 / 8.40 = 2.00 m high over the middle: C = -0.25 m.
        SeatsRoom room;
        room.in.screen = {.width_m = 10.0, .height_m = 5.0, .sill_m = 1.0, .setback_m = 0.0};
        room::SeatBlock block;
        block.rows = 4;
        block.first_row_back_m = 5.0;
        block.row_spacing_m = 1.0;
        block.riser_m = 0.5;
        block.cross_aisles = {{2, 1.4}};
        room.in.seating = {block};
        place(room);
        const Standing standing = standing_in(room, room.in.audience);
        REQUIRE(standing.aisles.size() == 1);
        CHECK(standing.aisles[0].row_behind == 2);
        check_close(standing.aisles[0].middle.z, 7.0, kRounding);
        check_close(standing.aisles[0].middle.y, 0.5, kRounding);
        CHECK_FALSE(standing.rows[0]);
        CHECK_FALSE(standing.rows[1]);
        REQUIRE(standing.rows[2]);
        check_close(standing.rows[2]->crown.y, 2.25, kRounding);
        check_close(standing.rows[2]->c_m, -0.25, kRounding);
        // Row D: at 9.40 m, eye 2.70 m; 2.70 - 1.70 x 2.40 / 9.40 - 2.25 = 0.015957 m.
        REQUIRE(standing.rows[3]);
        check_close(standing.rows[3]->c_m, 0.45 - 1.7 * 2.4 / 9.4, kRounding);
        CHECK(standing.rows[3]->aisle == 0);
    }

    TEST_CASE("of two aisles in front the one with less C counts") {
        SeatsRoom room;
        room::SeatBlock block;
        block.rows = 6;
        block.riser_m = 0.2;
        block.cross_aisles = {{1, 1.2}, {3, 1.2}};
        room.in.seating = {block};
        place(room);
        const auto aisles = room::cross_aisle_lines(room.in, 0.45);
        REQUIRE(aisles.size() == 2);
        CHECK(sight::aisles_ahead(room.plan, aisles, 0).empty());
        CHECK(sight::aisles_ahead(room.plan, aisles, 2) == std::vector<int>{0});
        CHECK(sight::aisles_ahead(room.plan, aisles, 5) == std::vector<int>{1, 0});
        const Standing standing = standing_in(room, room.in.audience);
        for (std::size_t r = 3; r < 6; ++r) {
            REQUIRE(standing.rows[r]);
            CHECK(standing.rows[r]->aisle == 1);
        }
    }

    TEST_CASE("people stand shoulder to shoulder, as broad and tall as their stature says") {
        SeatsRoom room;
        room::SeatBlock block;
        block.rows = 3;
        block.cross_aisles = {{1, 1.2}};
        room.in.seating = {block};
        place(room);
        const room::Audience& audience = room.in.audience;
        const auto aisles = room::cross_aisle_lines(room.in, sight::standing_pitch(audience));
        const auto people = sight::standing_people(aisles, audience);
        // 12 seats of 0.56 m are 6.72 m long: 14 people of 0.259 x 1.75 = 0.453 m.
        REQUIRE(people.heads.size() == 14);
        REQUIRE(people.walls.size() == 14);
        for (std::size_t i = 0; i < 14; ++i) {
            const sight::Head& head = people.heads[i];
            check_close(head.centre.y + head.half_height_m,
                        aisles[0].middle.y + audience.standing_height_m, kRounding);
            CHECK(head.eye == -1);
            check_close(people.walls[i].from.y, aisles[0].middle.y + 0.818 * 1.75, kRounding);
            if (i > 0) check_close(people.walls[i].from.x, people.walls[i - 1].to.x, kRounding);
        }
    }

    TEST_CASE("property: taller people take as much from C as they are taller") {
        std::mt19937 random(52001);
        for (int i = 0; i < 100; ++i) {
            INFO("draw ", i, " of seed 52001");
            const SeatsRoom room = random_seats_room(random);
            room::Audience tall = room.in.audience;
            tall.standing_height_m += 0.1;
            const Standing here = standing_in(room, room.in.audience);
            const Standing there = standing_in(room, tall);
            for (std::size_t r = 0; r < here.rows.size(); ++r) {
                REQUIRE(here.rows[r].has_value() == there.rows[r].has_value());
                if (here.rows[r])
                    check_close(there.rows[r]->c_m, here.rows[r]->c_m - 0.1, kRounding);
            }
        }
    }

    TEST_CASE("property: standing people hide from those behind them alone, and never less") {
        std::mt19937 random(52002);
        const double slack = 1e-12;  // the same silhouettes, united in another order
        int worse = 0;
        for (int i = 0; i < 40; ++i) {
            INFO("draw ", i, " of seed 52002");
            const SeatsRoom room = random_seats_room(random);
            const Standing here = standing_in(room, room.in.audience);
            const auto without = seated(room, room.in.audience);
            for (std::size_t s = 0; s < room.plan.seats.size(); ++s) {
                const bool behind = room.plan.seats[s].row >= here.aisles.at(0).row_behind;
                REQUIRE(here.hidden[s].has_value() == behind);
                if (!behind) continue;
                CHECK(*here.hidden[s] >= without[s].hidden_fraction - slack);
                worse += *here.hidden[s] > without[s].hidden_fraction + 0.01;
            }
        }
        CHECK(worse > 100);
    }

    TEST_CASE("property: rows that clear the crowns lose nothing on their centre line") {
        // A head lies within its crown's height: if every seat's own line to the picture's whole
        // lower edge passes over the crowns, nothing is hidden that was not before.
        std::mt19937 random(52003);
        int clear = 0;
        for (int i = 0; i < 60; ++i) {
            INFO("draw ", i, " of seed 52003");
            SeatsRoom room = random_seats_room(random);
            room.in.seating[0].row_radius_m = 0.0;
            room.in.seating[0].riser_m = 0.45;
            room.in.seating[0].wheelchair_places.clear();
            room.in.screen.radius_m = 0.0;
            room.in.screen.tilt_rad = 0.0;
            place(room);
            const Standing here = standing_in(room, room.in.audience);
            const auto without = seated(room, room.in.audience);
            for (std::size_t s = 0; s < room.plan.seats.size(); ++s) {
                const auto& over = here.rows[static_cast<std::size_t>(room.plan.seats[s].row)];
                // Half a head's depth nearer to the eye than the aisle's middle: 2 cm to spare.
                if (!over || over->c_m < 0.02) continue;
                check_close(*here.hidden[s], without[s].hidden_fraction,
                            absolute(1e-12, "the same silhouettes in another order"));
                ++clear;
            }
        }
        CHECK(clear > 20);
    }
}
