// SPDX-License-Identifier: MIT
#include "sight/rake.hpp"

#include "sight/random_rake.hpp"
#include "sight/row_clearance.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::sight;
using tests::absolute;
using tests::between;
using tests::check_close;
using tests::RakeRoom;
using tests::random_rake_room;

namespace {

constexpr double kExact = 1e-12;  // rounding of heights of order ten

RakeOver random_over(std::mt19937& random) {
    return random() % 2 ? RakeOver::row_in_front : RakeOver::second_row;
}

RakeOptions random_options(std::mt19937& random) {
    RakeOptions o;
    o.wanted_c_m = between(random, 0.03, 0.15);
    o.over = random_over(random);
    o.riser_step_m = between(random, 0.005, 0.05);
    o.flight_rows = 1 + static_cast<int>(random() % 4);
    if (random() % 3 == 0) o.flights_most = 1 + static_cast<int>(random() % 3);
    if (random() % 3 == 0) o.riser_most_m = between(random, 0.1, 0.4);
    if (random() % 3 == 0) o.slope_most_rad = between(random, 0.08, 0.3);
    if (random() % 3 == 0) o.headroom_m = between(random, 2.3, 4.0);
    return o;
}

/// Rows straight behind one another, 1 m apart from 5 m before a picture whose edge is at 1.0 m.
RakeRows plain_rows(int count) {
    RakeRows out;
    out.eye_height_m = 1.2;
    for (int n = 0; n < count; ++n) {
        RakeRow row;
        row.letter = std::string(1, static_cast<char>('A' + n));
        row.ceiling_m = 6.0;
        if (n > 0) {
            row.spacing_m = 1.0;
            row.over = {{n - 1, 0.0, (4.0 + n) / (5.0 + n), 1.0, 1.0, 0}};
        }
        out.rows.push_back(row);
    }
    return out;
}

double greatest_riser(const std::vector<double>& floor_m) {
    double out = 0.0;
    for (std::size_t n = 1; n < floor_m.size(); ++n)
        out = std::max(out, floor_m[n] - floor_m[n - 1]);
    return out;
}

}  // namespace

TEST_SUITE("sight/rake") {
    // Worked by plain arithmetic:
    //   y, u, C = 0.2, 0.0, 0.12
    //   for n in range(1, 5):
    //       x = 5 + n; need = (y + C)*x/(x - 1) - y; r = ceil(need/0.05)*0.05; y += r
    // On the exact floor B rises 0.184 and C 0.504 x 7/6 - 0.384 = 0.204; on the rounded one:
    //   B  need (0.20 + 0.12) 6/5 - 0.20 = 0.184    -> 0.20, y 0.40
    //   C  need (0.40 + 0.12) 7/6 - 0.40 = 0.206667 -> 0.25, y 0.65
    //   D  need (0.65 + 0.12) 8/7 - 0.65 = 0.23     -> 0.25, y 0.90
    //   E  need (0.90 + 0.12) 9/8 - 0.90 = 0.2475   -> 0.25, y 1.15
    TEST_CASE("a small room worked by hand") {
        RakeOptions o;
        o.riser_step_m = 0.05;
        const RakePlan plan = plan_rake(plain_rows(5), o);
        REQUIRE(plan.stages.size() == 2);
        const auto& exact = plan.stages[0].floor_m;
        check_close(exact[1], 0.184, absolute(kExact, "exact"));
        check_close(exact[2], 0.184 + 0.204, absolute(kExact, "exact"));
        const std::vector<double> built{0.0, 0.20, 0.45, 0.70, 0.95};
        for (std::size_t n = 0; n < built.size(); ++n)
            check_close(plan.built().floor_m[n], built[n], absolute(kExact, "whole steps"));
        CHECK(plan.built().meets);
        // C of E: 8/9 (0.95 + 1.2) + 1/9 x 1.0 - 1.9 = 0.122222; D: 7/8 1.9 + 1/8 - 1.65 = 0.1375.
        check_close(plan.built().sights[4]->c_m, 0.122222, tests::printed_digits(6));
        check_close(plan.built().sights[3]->c_m, 0.1375, tests::printed_digits(6));
        CHECK(plan.built().least_row == 4);
    }

    TEST_CASE("a ceiling that keeps the wanted C out of reach shares what is left") {
        RakeOptions o;
        o.riser_step_m = 0.001;
        o.headroom_m = 5.5;  // no floor over 0.5 m
        const RakePlan plan = plan_rake(plain_rows(5), o);
        const RakeStage& built = plan.built();
        CHECK(built.restriction == Restriction::ceiling);
        CHECK_FALSE(built.meets);
        CHECK(built.floor_m.back() <= 0.5 + kExact);
        // Equal clearance over four rows that ends at 0.5 m: y4/9 = 0.2/5 + C (1/5+1/6+1/7+1/8),
        // y4 = 0.7: C = 0.059532; steps of 1 mm may take up to some mm of it.
        const double c = built.spare_m(o.wanted_c_m) + o.wanted_c_m;
        CHECK(c <= 0.059532);
        CHECK(c > 0.057);
        o.headroom_m = 6.5;
        const RakePlan none = plan_rake(plain_rows(5), o);
        CHECK_FALSE(none.buildable());
        CHECK(none.blocked_row == 1);
    }

    TEST_CASE("property: the exact floor gives every row the wanted C") {
        std::mt19937 random(31);
        for (int round = 0; round < 200; ++round) {
            INFO("seed 31, round ", round);
            const RakeRoom room = random_rake_room(random, 2, 14);
            const RakeRows rows = room.rows(random_over(random));
            const double wanted = between(random, 0.03, 0.2);
            const auto sights = row_sights(rows, exact_floor(rows, wanted), wanted);
            for (std::size_t n = 1; n < sights.size(); ++n) {
                check_close(sights[n]->c_m, wanted * sights[n]->wanted_share,
                            absolute(kExact, "the recursion inverts C"));
            }
        }
    }

    TEST_CASE("property: C of the solver is that of the sight study") {
        std::mt19937 random(32);
        for (int round = 0; round < 100; ++round) {
            INFO("seed 32, round ", round);
            RakeRoom room = random_rake_room(random, 3, 12);
            const RakeRows rows = room.rows(RakeOver::row_in_front);
            const auto floor = exact_floor(rows, 0.1);
            room.block() = tests::on_floors(room.block(), floor);
            const auto sights = row_sights(rows, floor, 0.1);
            const room::SeatPlan plan = room.plan();
            for (std::size_t n = 1; n < sights.size(); ++n) {
                double least = 1e9;
                for (const picture::Opening& opening : room.openings) {
                    const auto c =
                        row_clearances(room.surface, opening, plan, room.seats.seating).at(n).c_m;
                    least = std::min(least, c.value());
                }
                check_close(sights[n]->c_m, least, absolute(1e-11, "two ways of collecting terms"));
            }
        }
    }

    TEST_CASE(
        "property: a built floor clears the wanted C unless a limit says so, and keeps them") {
        std::mt19937 random(33);
        int missed = 0;
        for (int round = 0; round < 200; ++round) {
            INFO("seed 33, round ", round);
            const RakeOptions o = random_options(random);
            const RakeRows rows = random_rake_room(random, 2, 10).rows(o.over);
            const RakePlan plan = plan_rake(rows, o);
            if (!plan.buildable()) continue;
            const RakeStage& built = plan.built();
            const bool short_of = built.spare_m(o.wanted_c_m) < -1e-8;
            CHECK(built.meets == !short_of);
            if (short_of) {
                ++missed;
                CHECK((o.riser_most_m || o.slope_most_rad || o.headroom_m || o.flights_most));
            }
            for (std::size_t n = 1; n < built.floor_m.size(); ++n) {
                const double riser = built.floor_m[n] - built.floor_m[n - 1];
                CHECK(riser >= -kExact);
                const double steps = riser / o.riser_step_m;
                check_close(steps, std::round(steps), absolute(1e-9, "whole steps"));
                if (o.riser_most_m) CHECK(riser <= *o.riser_most_m + 1e-8);
                if (o.slope_most_rad)
                    CHECK(riser <= std::tan(*o.slope_most_rad) * rows.rows[n].spacing_m + 1e-8);
                if (o.headroom_m)
                    CHECK(built.floor_m[n] + *o.headroom_m <= rows.rows[n].ceiling_m + 1e-8);
            }
        }
        CHECK(missed > 10);
        CHECK(missed < 150);
    }

    TEST_CASE("property: rounding alone lifts no row by more than it must") {
        std::mt19937 random(34);
        for (int round = 0; round < 100; ++round) {
            INFO("seed 34, round ", round);
            RakeOptions o;
            o.riser_step_m = between(random, 0.002, 0.03);
            const RakeRows rows = random_rake_room(random, 2, 14).rows(o.over);
            const RakePlan plan = plan_rake(rows, o);
            const auto& exact = plan.stages[0].floor_m;
            const auto& built = plan.stages[1].floor_m;
            // Less than a step in every row, grown by the lines behind it: 1/t each. Where the
            // exact floor falls, level rows cost more; those rooms say nothing here.
            double lift = 0.0;
            for (std::size_t n = 1; n < exact.size(); ++n) {
                if (exact[n] < exact[n - 1]) break;
                double grown = 0.0;
                for (const SightOver& over : rows.rows[n].over)
                    grown = std::max(grown, lift / over.share);
                lift = grown + o.riser_step_m;
                CHECK(built[n] >= exact[n] - 1e-7);
                CHECK(built[n] <= exact[n] + lift);
            }
        }
    }

    TEST_CASE("property: wanting more never lowers a row of the exact floor nor the rounded one") {
        std::mt19937 random(35);
        for (int round = 0; round < 100; ++round) {
            INFO("seed 35, round ", round);
            RakeOptions o;
            o.over = random_over(random);
            o.wanted_c_m = between(random, 0.02, 0.15);
            const RakeRows rows = random_rake_room(random, 2, 12).rows(o.over);
            const RakePlan low = plan_rake(rows, o);
            o.wanted_c_m += between(random, 0.001, 0.05);
            const RakePlan high = plan_rake(rows, o);
            for (std::size_t stage = 0; stage < 2; ++stage) {
                for (std::size_t n = 0; n < rows.rows.size(); ++n)
                    CHECK(high.stages[stage].floor_m[n] >= low.stages[stage].floor_m[n] - kExact);
            }
        }
    }

    TEST_CASE("property: each restriction laid on top raises the last row or takes from C") {
        std::mt19937 random(36);
        for (int round = 0; round < 100; ++round) {
            INFO("seed 36, round ", round);
            const RakeOptions o = random_options(random);
            const RakePlan plan = plan_rake(random_rake_room(random, 3, 9).rows(o.over), o);
            for (std::size_t s = 2; s < plan.stages.size(); ++s) {
                const RakeStage& before = plan.stages[s - 1];
                const RakeStage& after = plan.stages[s];
                if (after.floor_m.empty()) continue;
                CHECK((!after.meets || before.meets));
                if (after.meets) CHECK(after.rise_m() >= before.rise_m() - kExact);
                if (!before.meets)
                    CHECK(after.spare_m(o.wanted_c_m) <= before.spare_m(o.wanted_c_m) + 1e-6);
            }
        }
    }

    TEST_CASE("property: a room twice as large has a floor twice as high") {
        std::mt19937 random(37);
        for (int round = 0; round < 60; ++round) {
            INFO("seed 37, round ", round);
            RakeOptions o = random_options(random);
            RakeRows rows = random_rake_room(random, 3, 10).rows(o.over);
            const RakePlan plan = plan_rake(rows, o);
            rows.eye_height_m *= 2.0;
            for (RakeRow& row : rows.rows) {
                for (double* x : {&row.spacing_m, &row.floor_m, &row.ceiling_m})
                    *x *= 2.0;
                for (SightOver& over : row.over)
                    over.focus_up_m *= 2.0;
            }
            o.wanted_c_m *= 2.0;
            o.riser_step_m *= 2.0;
            for (auto* x : {&o.riser_most_m, &o.headroom_m}) {
                if (*x) **x *= 2.0;
            }
            const RakePlan twice = plan_rake(rows, o);
            REQUIRE(twice.stages.size() == plan.stages.size());
            // The bound of a layout does not grow: floors that come near it say nothing here.
            for (std::size_t s = 0; s < plan.stages.size(); ++s) {
                if (!plan.stages[s].meets || greatest_riser(plan.stages[s].floor_m) > 0.75)
                    continue;
                for (std::size_t n = 0; n < plan.stages[s].floor_m.size(); ++n) {
                    check_close(twice.stages[s].floor_m[n], 2.0 * plan.stages[s].floor_m[n],
                                absolute(1e-9, "rounding"));
                }
            }
        }
    }

    TEST_CASE("refuses: options out of range") {
        CHECK(option_faults({}).empty());
        RakeOptions o;
        o.wanted_c_m = std::nan("");
        o.riser_step_m = 0.0;
        o.flight_rows = 0;
        o.flights_most = 0;
        o.riser_most_m = -0.1;
        o.slope_most_rad = 2.0;
        o.headroom_m = -1.0;
        o.beam_headroom_m = std::nan("");
        CHECK(option_faults(o).size() == 8);
    }
}
