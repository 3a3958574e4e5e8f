// SPDX-License-Identifier: MIT
#include "light/contrast.hpp"

#include "support/check.hpp"

#include <random>

using namespace rakeline;
using light::Veil;
using tests::check_close;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-13, "rounding");

}  // namespace

TEST_SUITE("light/contrast") {
    TEST_CASE("in an all black hall without lights the machine's own contrast stands") {
        const Veil dark{.white_cdm2 = 48.0, .machine_contrast = 2000.0};
        check_close(light::black_cdm2(dark), 0.024, kRounding);
        check_close(light::sequential_contrast(dark), 2000.0, kRounding);
        check_close(light::in_picture_contrast(dark), 2000.0, kRounding);
    }

    TEST_CASE("48 cd/m2, 1 % back and 0.01 cd/m2 of exit signs, worked by hand") {
        const Veil v{.white_cdm2 = 48.0,
                     .machine_contrast = 2000.0,
                     .bounce_cdm2 = 0.48,
                     .stray_cdm2 = 0.01};
        // Black 48.48/2000 + 0.01 = 0.03424; white 48.49.
        check_close(light::black_cdm2(v), 0.03424, kRounding);
        check_close(light::sequential_contrast(v), 1416.2, tests::printed_digits(1));
        // m = 0.50025: a veil of 0.24012 + 0.01 on 48 and on 0.024: 48.25012 / 0.27412.
        check_close(light::in_picture_contrast(v), 176.02, tests::printed_digits(2));
    }

    TEST_CASE("property: more stray light, more bounce or a poorer machine never raise contrast") {
        std::mt19937 random(831);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 200; ++i) {
            const Veil v{.white_cdm2 = 10.0 + 60.0 * unit(random),
                         .machine_contrast = 500.0 + 3000.0 * unit(random),
                         .bounce_cdm2 = 2.0 * unit(random),
                         .stray_cdm2 = 0.1 * unit(random)};
            Veil brighter = v, bouncing = v, poorer = v;
            brighter.stray_cdm2 += 0.01;
            bouncing.bounce_cdm2 += 0.1;
            poorer.machine_contrast *= 0.9;
            CHECK(light::sequential_contrast(brighter) < light::sequential_contrast(v));
            CHECK(light::in_picture_contrast(brighter) < light::in_picture_contrast(v));
            CHECK(light::in_picture_contrast(bouncing) < light::in_picture_contrast(v));
            CHECK(light::sequential_contrast(poorer) < light::sequential_contrast(v));
            CHECK(light::in_picture_contrast(poorer) < light::in_picture_contrast(v));
            CHECK(light::sequential_contrast(v) <= v.machine_contrast * (1.0 + 1e-12));
            CHECK(light::in_picture_contrast(v) <= light::sequential_contrast(v));
            // All luminances twice as high: no contrast changes.
            const Veil twice{2.0 * v.white_cdm2, v.machine_contrast, 2.0 * v.bounce_cdm2,
                             2.0 * v.stray_cdm2};
            check_close(light::sequential_contrast(twice), light::sequential_contrast(v),
                        kRounding);
            check_close(light::in_picture_contrast(twice), light::in_picture_contrast(v),
                        kRounding);
        }
    }
}
