// SPDX-License-Identifier: MIT
// Outside: Barten, "Formula for the contrast sensitivity of the human eye" (2004), as reported: the
// formula worked by hand for the luminances of a cinema.
#include "sound/eye_contrast.hpp"
#include "support/check.hpp"

#include <cmath>

using rakeline::sound::ContrastSense;
using rakeline::tests::check_close;
using rakeline::tests::printed_digits;

TEST_SUITE("outside/Barten's contrast sensitivity") {
    TEST_CASE("golden: sensitivities at 48 cd/m2 over 40 degrees and 100 cd/m2 over 10") {
        const ContrastSense cinema(48.0);
        check_close(cinema.sensitivity(1.0, 1600.0), 541.9, printed_digits(1));
        check_close(cinema.sensitivity(2.24, 1600.0), 689.1, printed_digits(1));
        check_close(cinema.sensitivity(4.0, 1600.0), 604.0, printed_digits(1));
        check_close(cinema.sensitivity(30.0, 1600.0), 23.8, printed_digits(1));
        check_close(ContrastSense(100.0).sensitivity(4.0, 100.0), 633.7, printed_digits(1));
    }

    TEST_CASE("the eye is keenest at 2.24 cycles a degree at 48 cd/m2 over 40 degrees") {
        const ContrastSense cinema(48.0);
        double best = 0.0;
        double at = 0.0;
        for (double u = 0.5; u < 10.0; u += 0.01) {
            if (cinema.sensitivity(u, 1600.0) > best) best = cinema.sensitivity(at = u, 1600.0);
        }
        check_close(at, 2.24, printed_digits(2));
    }

    TEST_CASE("property: brighter pictures and larger fields are seen more keenly, nothing at 0") {
        for (const double u : {0.3, 1.0, 3.0, 10.0, 30.0}) {
            double before = 0.0;
            for (const double luminance : {1.0, 10.0, 48.0, 200.0}) {
                const ContrastSense sense(luminance);
                CHECK(sense.sensitivity(u, 900.0) > before);
                CHECK(sense.sensitivity(u, 900.0) > sense.sensitivity(u, 100.0));
                before = sense.sensitivity(u, 900.0);
            }
        }
        CHECK(ContrastSense(48.0).sensitivity(0.0, 900.0) == 0.0);
    }
}
