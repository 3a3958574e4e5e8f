// SPDX-License-Identifier: MIT
// Source: twelve rows of equal clearance worked by hand from the published C-value formula
// (EN 13200-1 form): first eye 6.0 m from the focus and 0.08 m below it, tread 1.10 m, C 0.12 m.
#include "sight/row_clearance.hpp"
#include "support/check.hpp"

#include <array>
#include <cmath>

using namespace rakeline::tests;
using rakeline::sight::c_value;
using rakeline::sight::riser_for_c;

namespace {

constexpr double kTread = 1.10;
constexpr double kWanted = 0.12;
constexpr std::array<double, 12> kEyes = {-0.0800, 0.0473, 0.1933, 0.3553, 0.5315, 0.7204,
                                          0.9208,  1.1317, 1.3522, 1.5816, 1.8193, 2.0648};
constexpr std::array<double, 11> kRisers = {0.1273, 0.1459, 0.1620, 0.1762, 0.1889, 0.2004,
                                            0.2109, 0.2205, 0.2294, 0.2377, 0.2455};

double distance_of(std::size_t row) {
    return 6.0 + kTread * static_cast<double>(row);
}

}  // namespace

TEST_SUITE("outside/equal_c_rows") {
    TEST_CASE("golden: the table's eyes and risers, row after row") {
        double eye = kEyes[0];
        for (std::size_t row = 0; row + 1 < kEyes.size(); ++row) {
            INFO("riser behind row ", row);
            const double riser = riser_for_c(distance_of(row), eye, kTread, kWanted);
            check_close(riser, kRisers[row], printed_digits(4));
            eye += riser;
            check_close(eye, kEyes[row + 1], printed_digits(4));
        }
    }

    TEST_CASE("golden: the printed eyes clear 120 mm each") {
        for (std::size_t row = 0; row + 1 < kEyes.size(); ++row) {
            check_close(c_value(distance_of(row), kEyes[row], kTread, kEyes[row + 1] - kEyes[row]),
                        kWanted, absolute(1e-4, "two eyes printed to 0.1 mm"));
        }
    }

    TEST_CASE("golden: the continuous curve ends 0.126 m below the stepped floor") {
        // The isacoustic curve y = x (y0/x0 + C/T ln(x/x0)) prints 1.9389 at the last row.
        double eye = kEyes[0];
        for (std::size_t row = 0; row + 1 < kEyes.size(); ++row) {
            eye += riser_for_c(distance_of(row), eye, kTread, kWanted);
        }
        check_close(eye - 1.9389, 0.126, printed_digits(3));
    }
}
