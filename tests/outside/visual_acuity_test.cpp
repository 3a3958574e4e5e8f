// SPDX-License-Identifier: MIT
// Source: worked from the one minute of arc that a normal eye resolves, 1/tan(1') = 3437.75.
#include "sound/perforation.hpp"
#include "support/check.hpp"

using namespace rakeline::tests;
using rakeline::sound::hole_visible_from_m;

TEST_SUITE("outside/visual_acuity") {
    TEST_CASE("golden: distances at which holes and pitches come down to one minute") {
        check_close(hole_visible_from_m(0.0012), 4.13, printed_digits(2));
        check_close(hole_visible_from_m(0.005), 17.19, printed_digits(2));
        check_close(hole_visible_from_m(1.0), 3437.75, printed_digits(2));
    }
}
