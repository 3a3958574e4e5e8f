// SPDX-License-Identifier: MIT
#include "sight/rake_reverse.hpp"

#include "room/rows.hpp"
#include "sight/aisle_steps.hpp"
#include "sight/rake.hpp"
#include "sight/random_rake.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::sight;
using tests::absolute;
using tests::between;
using tests::check_close;
using tests::RakeRoom;

namespace {

/// The least C over what is wanted, of all rows but the first.
double least_spare(const RakeRows& rows, double wanted) {
    std::vector<double> floors;
    for (const RakeRow& row : rows.rows)
        floors.push_back(row.floor_m);
    double least = 1e9;
    const auto sights = row_sights(rows, floors, wanted);
    for (std::size_t n = 1; n < sights.size(); ++n)
        least = std::min(least, sights[n]->c_m - sights[n]->wanted_share * wanted);
    return least;
}

/// Two rows before a picture whose edge is at 1.2 m, the first 5 m away, on risers or on a slope.
RakeRows two_rows(double spacing_m, double riser_m, double slope) {
    RakeRows rows;
    rows.eye_height_m = 1.2;
    rows.rows.resize(2);
    rows.rows[1].spacing_m = spacing_m;
    rows.rows[1].floor_m = riser_m + slope * spacing_m;
    rows.rows[1].over = {{0, 0.0, 5.0 / (5.0 + spacing_m), 1.2, 1.0, 0}};
    return rows;
}

}  // namespace

TEST_SUITE("sight/rake_reverse") {
    TEST_CASE("property: at the lowest sill the tightest row has just the wanted C") {
        std::mt19937 random(51);
        for (int round = 0; round < 100; ++round) {
            INFO("seed 51, round ", round);
            RakeRoom room = tests::random_rake_room(random, 3, 10);
            room.block().floor = room::BlockFloor::stepped;
            room.block().riser_m = between(random, 0.1, 0.3);
            const auto over = random() % 2 ? RakeOver::row_in_front : RakeOver::second_row;
            const double wanted = between(random, 0.02, 0.12);
            double& sill = room.seats.screen.sill_m;
            const auto found = lowest_sill(room.rows(over), wanted, sill);
            REQUIRE(found.has_value());
            sill = found->value_m;
            room.surface = picture::screen_patch(room.seats.screen);
            const RakeRows rows = room.rows(over);
            check_close(least_spare(rows, wanted), 0.0, absolute(1e-11, "closed form"));
            RakeRoom lower = room;
            lower.seats.screen.sill_m -= 0.01;
            lower.surface = picture::screen_patch(lower.seats.screen);
            CHECK(least_spare(lower.rows(over), wanted) < -1e-6);
        }
    }

    TEST_CASE("spacing by hand: risers fixed may grow, a slope has to") {
        // Riser 0.2, eye level with the edge: C = 5 x 0.2/(5 + s) >= 0.15 up to s = 5/3.
        const auto risers = spacing_range([](double s) { return two_rows(s, 0.2, 0.0); }, 0.15);
        REQUIRE(risers.has_value());
        CHECK(risers->from_bottom);
        CHECK_FALSE(risers->to_top);
        check_close(risers->greatest.value_m, 5.0 / 3.0, absolute(1e-6, "halved to 0.1 um"));
        CHECK(risers->greatest.row == 1);
        // Slope 1 in 10: C = 0.1 s x 5/(5 + s) >= 0.08 from s = 0.4/(0.5 - 0.08).
        const auto slope = spacing_range([](double s) { return two_rows(s, 0.0, 0.1); }, 0.08);
        REQUIRE(slope.has_value());
        CHECK(slope->to_top);
        check_close(slope->least.value_m, 0.4 / 0.42, absolute(1e-6, "halved to 0.1 um"));
        CHECK_FALSE(spacing_range([](double s) { return two_rows(s, 0.0, 0.0); }, 0.08));
    }
}

TEST_SUITE("sight/aisle_steps") {
    TEST_CASE("a riser over the step limit takes intermediate steps, all alike") {
        const AisleSteps two = aisle_steps(0.31, 1.1, kAisleStepMost_m);
        CHECK(two.count == 2);
        check_close(two.riser_m, 0.155, absolute(1e-12, "halved"));
        check_close(two.going_m, 0.55, absolute(1e-12, "halved"));
        CHECK(aisle_steps(0.2, 1.0, 0.1).count == 2);
        CHECK(aisle_steps(0.0, 1.0, 0.2) == AisleSteps{});
        CHECK(aisle_steps(-0.3, 1.0, 0.2).count == 2);
    }

    TEST_CASE("property: no step is over the limit, and one step fewer would be") {
        std::mt19937 random(52);
        for (int round = 0; round < 200; ++round) {
            const double riser = between(random, 0.01, 1.0);
            const double most = between(random, 0.1, 0.25);
            const AisleSteps steps = aisle_steps(riser, 1.0, most);
            CHECK(steps.riser_m <= most + 1e-8);
            if (steps.count > 1) CHECK(riser / (steps.count - 1) > most);
        }
    }
}
