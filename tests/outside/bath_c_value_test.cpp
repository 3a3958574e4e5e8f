// SPDX-License-Identifier: MIT
// Source: University of Bath / Plus Maths stadium sight-line worksheets (P. Shepherd, 2012), the
// problem and its formula. The sheet leaves the answer to the reader: it is worked from its
// formula.
#include "sight/row_clearance.hpp"
#include "support/check.hpp"

using namespace rakeline::tests;

TEST_SUITE("outside/bath_c_value") {
    TEST_CASE("golden: the worksheet's riser for 150 mm at 30 m, and back") {
        // Worksheet problem: D 30 m, R 10 m, T 1 m, C 0.15 m.
        check_close(rakeline::sight::riser_for_c(30.0, 10.0, 1.0, 0.15), 0.48833,
                    printed_digits(5));
        check_close(rakeline::sight::c_value(30.0, 10.0, 1.0, 0.48833), 0.15000, printed_digits(5));
    }

    TEST_CASE("golden: a stadium textbook's riser, from memory") {
        // Remembered to print 0.41 for D 18, R 6.5, T 0.8, C 0.12: from memory, not confirmed.
        check_close(rakeline::sight::riser_for_c(18.0, 6.5, 0.8, 0.12), 0.41, printed_digits(2));
    }
}
