// SPDX-License-Identifier: MIT
// Source: Gjestland, How to design a cinema auditorium, UNIC, 2nd edition 2020, pp. 16-17: a
// sagitta of 5 % of the chord as a compromise; s = R - sqrt(R^2 - W^2/4), so R = 2.525 W.
#include "picture/opening.hpp"
#include "support/check.hpp"

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

    TEST_CASE("golden: a picture is larger by its arc, not by its depth") {
        const auto flat = open_frame(screen_of_radius(0.0));
        const auto curved = open_frame(screen_of_radius(50.5));
        check_close(curved.area_m2 / flat.area_m2, 20.133 / 20.0,
                    absolute(0.5e-3 / 20.0, "half a unit of the printed 20.133"));
    }
}
