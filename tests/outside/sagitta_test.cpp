// SPDX-License-Identifier: MIT
// Source: Gjestland, How to design a cinema auditorium, UNIC, 2nd edition 2020, pp. 16-17: a
// sagitta of 5 % of the chord as a compromise; s = R - sqrt(R^2 - W^2/4), so R = 2.525 W.
#include "picture/opening.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// A frame 20 m wide, wholly open.
room::Screen screen_of_radius(double radius_m) {
    room::Screen s;
    s.width_m = 20.0;
    s.height_m = 10.0;
    s.radius_m = radius_m;
    return s;
}

picture::Opening open_frame(const room::Screen& s) {
    return picture::masked_opening(s, {.name = "2.00", .aspect_ratio = 2.0, .opening_width_m = {}});
}

}  // namespace

TEST_SUITE("outside/sagitta") {
    TEST_CASE("golden: 20 m of chord on a 50.5 m radius is 1.0 m deep and 20.133 m of arc") {
        const room::Screen s = screen_of_radius(50.5);
        const auto opening = open_frame(s);
        const auto side = picture::opening_point(picture::screen_patch(s), opening, 1.0, 0.0);
        check_close(side.x, 10.0, relative(1e-12, "half the chord"));
        check_close(side.z - s.setback_m, 1.0, printed_digits(1));
        check_close(side.z - s.setback_m, 0.05 * 20.0, relative(1e-12, "2.525 W exactly"));
        check_close(opening.uv.width(), 20.133, printed_digits(3));
        check_close(opening.width_m, 20.0, relative(1e-12, "rounding"));
    }

    TEST_CASE("golden: the rule of 5 % asks for 2.525 widths of radius at any width") {
        for (double width = 4.0; width <= 30.0; width += 0.5) {
            INFO(width, " m");
            room::Screen s;
            s.width_m = width;
            s.height_m = width / 2.0;
            s.radius_m = 2.525 * width;
            const auto side =
                picture::opening_point(picture::screen_patch(s), open_frame(s), -1.0, 0.0);
            check_close(side.x, -0.5 * width, relative(1e-12, "half the chord"));
            check_close(side.z - s.setback_m, 0.05 * width, relative(1e-12, "exact, to rounding"));
        }
    }

    TEST_CASE("golden: every sheet is as deep as R - sqrt(R^2 - W^2/4) says") {
        for (double radius = 10.5; radius < 400.0; radius *= 1.3) {
            INFO("20 m on a radius of ", radius, " m");
            const room::Screen s = screen_of_radius(radius);
            const auto side =
                picture::opening_point(picture::screen_patch(s), open_frame(s), 1.0, 0.0);
            const double depth = side.z - s.setback_m;
            check_close(depth, radius - std::sqrt(radius * radius - 100.0),
                        relative(1e-10, "the printed form loses digits on large radii"));
            check_close(0.5 * depth + 50.0 / depth, radius,
                        relative(1e-10, "the radius from chord and depth, the other way"));
        }
    }

    TEST_CASE("golden: a picture is larger by its arc, not by its depth") {
        const auto flat = open_frame(screen_of_radius(0.0));
        const auto curved = open_frame(screen_of_radius(50.5));
        check_close(curved.area_m2 / flat.area_m2, 20.133 / 20.0,
                    absolute(0.5e-3 / 20.0, "half a unit of the printed 20.133"));
    }
}
