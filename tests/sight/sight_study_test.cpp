// SPDX-License-Identifier: MIT
#include "sight/sight_study.hpp"

#include "sight/test_picture.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline;
using tests::absolute;
using tests::check_close;

namespace {

room::SeatPlanInput small_room(room::BlockFloor floor) {
    room::SeatPlanInput in;
    in.screen.width_m = 11.0;
    in.screen.height_m = 4.6;
    room::SeatBlock block;
    block.rows = 9;
    block.seats_per_row = 10;
    block.floor = floor;
    in.seating = {block};
    return in;
}

sight::SightInput input_of(const room::SeatPlanInput& room_in) {
    sight::SightInput in;
    in.surface = picture::screen_patch(room_in.screen);
    for (const double ratio : {1.85, 2.39}) {
        in.openings.push_back(tests::opening_of(room_in.screen, ratio));
    }
    in.seats = room::place_seats(room_in);
    in.blocks = room_in.seating;
    return in;
}

}  // namespace

TEST_SUITE("sight/sight_study") {
    TEST_CASE("every format holds the angles of each seat's own eye, and every row") {
        const sight::SightInput in = input_of(small_room(room::BlockFloor::stepped));
        const sight::SightStudy study = sight::study_sight(in);
        REQUIRE(study.formats.size() == 2);
        for (std::size_t f = 0; f < 2; ++f) {
            REQUIRE(study.formats[f].seats.size() == 90);
            REQUIRE(study.formats[f].rows.size() == 9);
            for (const std::size_t seat : {0U, 37U, 89U}) {
                CHECK(study.formats[f].seats[seat] ==
                      sight::viewing_angles(in.surface, in.openings[f], in.seats.seats[seat].eye));
            }
        }
        CHECK(study.formats[1].seats[0].subtended_width >
              study.formats[0].seats[0].subtended_width);
    }

    TEST_CASE("property: from edit to edit the sight is what it is from scratch, exactly") {
        std::mt19937 random(511);
        std::uniform_real_distribution<double> by_m(-0.05, 0.05);
        room::SeatPlanInput room_in = small_room(room::BlockFloor::flights);
        room_in.seating.front().flights = {{8, 0.12}};
        sight::SightCache cache;
        for (int step = 0; step < 40; ++step) {
            room::SeatBlock& block = room_in.seating.front();
            const std::size_t flights = 1 + random() % 7;
            block.flights.resize(flights, {1, 0.12});
            block.flights[random() % flights].riser_m += by_m(random);
            if (step % 5 == 0) block.row_spacing_m += by_m(random);
            if (step % 7 == 0) block.rows = 7 + static_cast<int>(random() % 3);
            if (step % 11 == 0) room_in.screen.sill_m += by_m(random);
            sight::SightInput in = input_of(room_in);
            if (step % 13 == 0) in.openings.pop_back();
            INFO("step ", step);
            REQUIRE(cache.update(in) == sight::study_sight(in));
        }
    }

    TEST_CASE("a level floor clears little where the eyes are below the picture's edge") {
        room::SeatPlanInput room_in = small_room(room::BlockFloor::level);
        room_in.screen.sill_m = 1.5;
        const sight::SightStudy study = sight::study_sight(input_of(room_in));
        for (std::size_t row = 1; row < 9; ++row) {
            const double c = study.formats[0].rows[row].c_m.value();
            // Level eyes under the edge: the line rises toward the screen, but by less than 0.1 m.
            CHECK(c > 0.0);
            CHECK(c < 0.1);
        }
    }

    TEST_CASE("an equal-clearance floor gives every row the clearance that it was made for") {
        room::SeatPlanInput room_in = small_room(room::BlockFloor::equal_clearance);
        room_in.seating[0].wanted_c_m = 0.115;
        const sight::SightStudy study = sight::study_sight(input_of(room_in));
        for (std::size_t row = 1; row < 9; ++row) {
            INFO("row ", row);
            check_close(study.formats[1].rows[row].c_m.value(), 0.115,
                        absolute(1e-9, "rounding along the recursion"));
        }
    }

    TEST_CASE("a room without seats or formats is studied to empty lists") {
        sight::SightInput in;
        CHECK(sight::study_sight(in).formats.empty());
        in.openings.resize(1);
        const sight::SightStudy study = sight::study_sight(in);
        REQUIRE(study.formats.size() == 1);
        CHECK(study.formats[0].seats.empty());
        CHECK(study.formats[0].rows.empty());
    }
}
