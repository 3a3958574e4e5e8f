// SPDX-License-Identifier: MIT
// Source: worked from the one minute of arc that a normal eye resolves, 1/tan(1') = 3437.75; the
// distances for one minute a pixel agree with the 3.2, 1.6 and 0.8 picture heights and 31, 58 and
// 96 degrees of ITU-R BT.1845 and BT.2022, from memory.
#include "base/units.hpp"
#include "sight/picture_detail.hpp"
#include "sound/perforation.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using sound::hole_visible_from_m;

namespace {

/// Distance in picture widths at which one of `pixels` across is one minute, seen squarely.
double widths_for(int pixels) {
    constexpr double kThrow_m = 20.0, kPitch_m = 1e-5;
    picture::Pose pose;
    pose.lens = {0.0, 0.0, kThrow_m};
    pose.image_distance_m = 0.05;
    const picture::PictureMap map(geometry::standing_patch({0, 0, 0}, 0.0, 0.0), pose);
    const double pixel_m = kPitch_m * kThrow_m / pose.image_distance_m;
    double near = 0.01, far = 1000.0;
    for (int i = 0; i < 100; ++i) {
        const double middle = 0.5 * (near + far);
        const auto angle = sight::element_angle(map, kPitch_m, {0.0, 0.0, middle});
        (angle.value() > sight::kAcuity_rad ? near : far) = middle;
    }
    return near / (pixels * pixel_m);
}

}  // namespace

TEST_SUITE("outside/visual_acuity") {
    TEST_CASE("golden: distances at which holes and pitches come down to one minute") {
        check_close(hole_visible_from_m(0.0012), 4.13, printed_digits(2));
        check_close(hole_visible_from_m(0.005), 17.19, printed_digits(2));
        check_close(hole_visible_from_m(1.0), 3437.75, printed_digits(2));
    }

    TEST_CASE("golden: one minute of arc is a sixtieth of a degree, so 60 pixels fill one") {
        check_close(sight::kAcuity_rad, base::radians(1.0 / 60.0), relative(1e-15, "rounding"));
    }

    TEST_CASE("golden: one pixel is one minute at 1.68 widths with 2048 across, 0.84 with 4096") {
        check_close(widths_for(2048), 1.6786, printed_digits(4));
        check_close(widths_for(4096), 0.8393, printed_digits(4));
    }

    TEST_CASE("golden: one line is one minute at 3.2, 1.6 and 0.8 picture heights") {
        // Square pixels: as many heights for the lines of a height as widths for those of a width.
        check_close(widths_for(1080), 3.183, printed_digits(3));
        check_close(widths_for(2160), 1.592, printed_digits(3));
        check_close(widths_for(4320), 0.796, printed_digits(3));
    }
}
