// SPDX-License-Identifier: MIT
// Sources: twelve rows of equal clearance worked from the published C-value formula (EN 13200-1
// form); the University of Bath sight-line worksheet; the digamma function of Boost.Math for the
// closed form of the sum of 1/x; the continuous equal-clearance curve (dy/dx = y/x + C/T); US
// cinema practice of 1945 (Theatre Catalog 1945): 4 in a row, 8 in over the row two ahead, a slope
// that changes at most every 3 rows, steps over 2 in a foot.
#include "base/units.hpp"
#include "sight/aisle_steps.hpp"
#include "sight/rake.hpp"
#include "support/check.hpp"

#include <array>
#include <boost/math/special_functions/digamma.hpp>
#include <cmath>

using namespace rakeline;
using namespace rakeline::sight;
using tests::absolute;
using tests::check_close;
using tests::printed_digits;

namespace {

/// Straight rows `spacing_m` apart, the first `first_m` from one focus.
struct Straight {
    double first_m = 6.0;
    double spacing_m = 1.10;
    double eye_m = 1.12;
    double focus_up_m = 1.20;
    int rows = 12;

    double x(int n) const { return first_m + spacing_m * n; }
    RakeRows rows_over(RakeOver over) const {
        RakeRows out;
        out.eye_height_m = eye_m;
        for (int n = 0; n < rows; ++n) {
            RakeRow row;
            row.spacing_m = n > 0 ? spacing_m : 0.0;
            const int ahead = over == RakeOver::second_row && n > 1 ? n - 2 : n - 1;
            const double part = over == RakeOver::second_row && n == 1 ? 0.5 : 1.0;
            if (n > 0) row.over = {{ahead, 0.0, x(ahead) / x(n), focus_up_m, part, 0}};
            out.rows.push_back(row);
        }
        return out;
    }
};

constexpr std::array kEyes{-0.0800, 0.0473, 0.1933, 0.3553, 0.5315, 0.7204,
                           0.9208,  1.1317, 1.3522, 1.5816, 1.8193, 2.0648};

}  // namespace

TEST_SUITE("outside/rake_practice") {
    TEST_CASE("golden: the exact floor is the sheet's, row by row") {
        const Straight room;
        const auto floor = exact_floor(room.rows_over(RakeOver::row_in_front), 0.12);
        for (std::size_t n = 0; n < kEyes.size(); ++n)
            check_close(floor[n] + room.eye_m - room.focus_up_m, kEyes[n], printed_digits(4));
    }

    TEST_CASE("golden: the worksheet's riser, 0.488 m for C 150 mm at 30 m") {
        Straight room{
            .first_m = 30.0, .spacing_m = 1.0, .eye_m = 10.0, .focus_up_m = 0.0, .rows = 2};
        const auto floor = exact_floor(room.rows_over(RakeOver::row_in_front), 0.15);
        check_close(floor[1], 0.48833, printed_digits(5));
    }

    TEST_CASE("golden: the sum of 1/x by the digamma function") {
        const Straight room{.rows = 40};
        const double c = 0.09;
        const auto floor = exact_floor(room.rows_over(RakeOver::row_in_front), c);
        for (int n = 0; n < room.rows; ++n) {
            const double sum = (boost::math::digamma(room.x(n) / room.spacing_m) -
                                boost::math::digamma(room.first_m / room.spacing_m)) /
                               room.spacing_m;
            const double y = room.x(n) * ((room.eye_m - room.focus_up_m) / room.first_m + c * sum);
            check_close(floor[static_cast<std::size_t>(n)] + room.eye_m - room.focus_up_m, y,
                        absolute(1e-12, "rounding of 40 rows"));
        }
    }

    TEST_CASE("golden: the continuous curve lies below the stepped floor, 1.9389 at the last row") {
        const Straight room;
        const auto floor = exact_floor(room.rows_over(RakeOver::row_in_front), 0.12);
        const double first = room.eye_m - room.focus_up_m;
        const auto curve = [&](int n) {
            return room.x(n) * (first / room.first_m +
                                0.12 / room.spacing_m * std::log(room.x(n) / room.first_m));
        };
        for (int n = 1; n < room.rows; ++n)
            CHECK(floor[static_cast<std::size_t>(n)] + first > curve(n));
        check_close(curve(11), 1.9389, printed_digits(4));
    }

    TEST_CASE("golden: 4 in over the row in front are nearly 8 in over the row two ahead") {
        // 1945: both rules name the same floor. C adds along the lines: over two rows it is
        // t C1 + C2 with t near 1, so a floor of 4 in a row clears a little under 8 in over two.
        const Straight room{.spacing_m = 34.0 * 0.0254};
        const double inch = 0.0254;
        const auto floor = exact_floor(room.rows_over(RakeOver::row_in_front), 4.0 * inch);
        const auto over_two = row_sights(room.rows_over(RakeOver::second_row), floor, 8.0 * inch);
        for (std::size_t n = 2; n < floor.size(); ++n) {
            CHECK(over_two[n]->c_m > 7.4 * inch);
            CHECK(over_two[n]->c_m < 8.0 * inch);
        }
        check_close(over_two[1]->c_m, 4.0 * inch, absolute(1e-12, "half over the first row"));
    }

    TEST_CASE("golden: a slope that changes at most every 3 rows, steps over 9.46 degrees") {
        Straight room{.spacing_m = 34.0 * 0.0254};
        RakeOptions o{.wanted_c_m = 4.0 * 0.0254, .riser_step_m = 0.5 * 0.0254, .flight_rows = 3};
        o.slope_most_rad = std::atan(kSteepestRamp);
        check_close(base::degrees(*o.slope_most_rad), 9.46, printed_digits(2));
        const RakePlan plan = plan_rake(room.rows_over(RakeOver::row_in_front), o);
        const RakeStage& grouped = plan.stages[2];
        REQUIRE(grouped.restriction == Restriction::flights);
        CHECK(grouped.meets);
        int run = 3;
        for (std::size_t n = 2; n < grouped.floor_m.size(); ++n) {
            const double change =
                grouped.floor_m[n] - 2.0 * grouped.floor_m[n - 1] + grouped.floor_m[n - 2];
            const bool same = std::abs(change) < 1e-9;
            if (n > 2 && !same) CHECK(run >= 3);
            run = same && n > 2 ? run + 1 : same ? 2 : 1;
        }
        // Twelve rows cannot have 4 in each on a floor without steps: the limit decides.
        CHECK_FALSE(plan.built().meets);
    }
}
