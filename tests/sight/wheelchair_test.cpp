// SPDX-License-Identifier: MIT
#include "sight/wheelchair.hpp"

#include "sight/random_seats.hpp"
#include "sight/row_clearance.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

const auto kRounding = absolute(1e-9, "rounding, and the foot on a curved edge found by halving");

std::vector<sight::WheelchairSight> sights_of(const SeatsRoom& room) {
    const auto house = sight::full_house(room.plan, room.in.seating, room.in.audience);
    return sight::wheelchair_sights(room.picture.surface, room.picture.opening, room.plan,
                                    room.in.seating, house, room.in.audience);
}

/// Everyone's hidden part, with the seats' eyes and heads as the plan has them.
std::vector<double> hidden_from_all(const SeatsRoom& room, const sight::Blockers& house) {
    std::vector<glm::dvec3> eyes;
    for (const room::Seat& seat : room.plan.seats)
        eyes.push_back(seat.eye);
    std::vector<double> out(eyes.size());
    sight::hidden_fractions(
        {room.picture.surface, room.picture.opening, eyes, house.heads, house.walls}, {}, out);
    return out;
}

}  // namespace

TEST_SUITE("sight/wheelchair") {
    TEST_CASE("a place sees over the row in front at both ends of the range, by hand") {
        // Rows 1.10 m apart from 5.00 m, risers 0.20 m, lower edge at 1.00 m before the wall; place
        // in row B: eyes at 0.20 + 1.09 = 1.29 m and 0.20 + 1.295 = 1.495 m, 6.10 m back. At 5.00 m
        // the lines are 1 + 0.29 x 5/6.1 and 1 + 0.495 x 5/6.1 m high, the front eye 1.20 m.
        SeatsRoom room;
        room.in.screen = {.width_m = 30.0, .height_m = 5.0, .sill_m = 1.0, .setback_m = 0.0};
        room::SeatBlock block;
        block.rows = 3;
        block.first_row_back_m = 5.0;
        block.row_spacing_m = 1.1;
        block.riser_m = 0.2;
        block.wheelchair_places = {{"A", 4}, {"B", 6}};
        room.in.seating = {block};
        place(room);
        const auto sights = sights_of(room);
        REQUIRE(sights.size() == 2);
        CHECK(sights[0].seat == 3);
        CHECK_FALSE(sights[0].low);
        CHECK_FALSE(sights[0].high);
        CHECK(sights[1].seat == 12 + 5);
        REQUIRE(sights[1].low);
        REQUIRE(sights[1].high);
        check_close(sights[1].low->c_m, 0.29 * 5.0 / 6.1 - 0.2, kRounding);
        check_close(sights[1].high->c_m, 0.495 * 5.0 / 6.1 - 0.2, kRounding);
        REQUIRE(sights[0].behind);
        CHECK(room.plan.seats[static_cast<std::size_t>(*sights[0].behind)].row == 1);
    }

    TEST_CASE("property: higher eyes have more C by their share of the line, and no less picture") {
        std::mt19937 random(53001);
        int defined = 0;
        for (int i = 0; i < 150; ++i) {
            INFO("draw ", i, " of seed 53001");
            const SeatsRoom room = random_seats_room(random);
            const double range_m =
                room.in.audience.wheelchair_eye_high_m - room.in.audience.wheelchair_eye_low_m;
            for (const sight::WheelchairSight& place : sights_of(room)) {
                if (!place.low) continue;
                REQUIRE(place.high);
                const auto terms =
                    sight::clearance_terms(place.low->rear, place.low->front, place.low->focus);
                REQUIRE(terms);
                const double share = terms->distance_m / (terms->distance_m + terms->tread_m);
                check_close(place.high->c_m - place.low->c_m, share * range_m, kRounding);
                ++defined;
            }
        }
        CHECK(defined > 100);
    }

    TEST_CASE("property: where the range is one height, both ends are the seat's own figures") {
        std::mt19937 random(53002);
        for (int i = 0; i < 40; ++i) {
            INFO("draw ", i, " of seed 53002");
            SeatsRoom room = random_seats_room(random);
            room::Audience& audience = room.in.audience;
            audience.wheelchair_eye_low_m = audience.wheelchair_eye_high_m =
                audience.wheelchair_eye_height_m;
            place(room);
            const auto house = sight::full_house(room.plan, room.in.seating, audience);
            const auto all = hidden_from_all(room, house);
            for (const sight::WheelchairSight& place : sights_of(room)) {
                const double own = all[static_cast<std::size_t>(place.seat)];
                CHECK(place.hidden_low_fraction == own);
                CHECK(place.hidden_high_fraction == own);
            }
        }
    }

    TEST_CASE("property: what a tall user hides is what the row behind loses, and never negative") {
        std::mt19937 random(53003);
        int some = 0;
        for (int i = 0; i < 40; ++i) {
            INFO("draw ", i, " of seed 53003");
            const SeatsRoom room = random_seats_room(random);
            auto house = sight::full_house(room.plan, room.in.seating, room.in.audience);
            const auto sights = sights_of(room);
            REQUIRE(sights.size() == 2);
            const sight::WheelchairSight& place = sights[0];
            REQUIRE(place.behind);
            auto& head = house.heads.at(static_cast<std::size_t>(place.seat));
            head.centre.y = room.plan.seats[static_cast<std::size_t>(place.seat)].floor.y +
                            room.in.audience.wheelchair_eye_high_m;
            const auto with = hidden_from_all(room, house);
            house.heads.erase(house.heads.begin() + place.seat);
            const auto without = hidden_from_all(room, house);
            double most = 0.0;
            for (std::size_t s = 0; s < with.size(); ++s)
                if (room.plan.seats[s].row == 1) most = std::max(most, with[s] - without[s]);
            const auto behind = static_cast<std::size_t>(*place.behind);
            CHECK(place.hides_fraction == with[behind] - without[behind]);
            CHECK(place.hides_fraction >= 0.0);
            // The five nearest hold the one that loses most, but for a hair.
            CHECK(place.hides_fraction >= 0.9 * most - 0.001);
            some += place.hides_fraction > 0.001;
        }
        CHECK(some > 5);
    }
}
