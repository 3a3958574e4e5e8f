// SPDX-License-Identifier: MIT
// Source: a cinema-lens maker's technical paper "Keystone Distortion" (abstract also indexed as a
// journal paper). Its case: 35 mm 1.85 picture (0.825 x 0.446 in aperture), 1.181 in lens, 100 ft
// of level throw, lens tilted 15 degrees. The paper sets the image distance to the focal length
// (the limit of far focus), so these checks do too.
#include "base/units.hpp"
#include "picture/picture_map.hpp"
#include "picture/picture_shape.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using base::kMetresPerFoot;
using base::kMetresPerInch;

namespace {

constexpr glm::dvec2 kAperture{0.825 * kMetresPerInch, 0.446 * kMetresPerInch};
constexpr double kFocalLength = 1.181 * kMetresPerInch;
constexpr double kTilt = base::radians(15.0);

/// Upright screen in the plane z = 0, its v measured from the lens's height.
picture::PictureMap paper_map() {
    picture::Pose pose = picture::aimed_pose({0.0, 0.0, 100.0 * kMetresPerFoot}, 0.0, kTilt, 0.0);
    pose.focal_length_m = kFocalLength;
    pose.image_distance_m = kFocalLength;
    return {geometry::standing_patch({0.0, 0.0, 0.0}, 0.0, 0.0), pose};
}

/// Height over the lens, in inches, where the middle of the gate's line `up` (-1 ... +1) falls.
double inches_over_lens(double up) {
    const auto uv = paper_map().screen_from_gate({0.0, 0.5 * up * kAperture.y});
    REQUIRE(uv);
    return uv->y / kMetresPerInch;
}

double width_ft(double up) {
    const auto map = paper_map();
    const double y = 0.5 * up * kAperture.y;
    const auto left = map.screen_from_gate({-0.5 * kAperture.x, y});
    const auto right = map.screen_from_gate({0.5 * kAperture.x, y});
    REQUIRE(left);
    REQUIRE(right);
    return (right->x - left->x) / kMetresPerFoot;
}

/// Height of the same picture on a screen square to the axis, through the same axis point.
double undistorted_inches() {
    const double along_axis = 100.0 * 12.0 / std::cos(kTilt);
    return along_axis * kAperture.y / kFocalLength;
}

}  // namespace

TEST_SUITE("outside/lens_paper_tilt") {
    TEST_CASE("golden: the half field is 10.69 degrees") {
        const auto ray = paper_map().ray({0.0, 0.5 * kAperture.y});
        const double half = geometry::angle_between(ray.direction, paper_map().pose().axis);
        check_close(base::degrees(half), 10.69, printed_digits(2));
    }

    TEST_CASE("golden: picture top 7 ft 6 in and bottom 48 ft 1 in below the lens") {
        check_close(inches_over_lens(1.0), -(7.0 * 12.0 + 6.0), printed_digits(0));
        check_close(inches_over_lens(-1.0), -(48.0 * 12.0 + 1.0), printed_digits(0));
    }

    TEST_CASE("golden: 40 ft 7 in high against 39 ft 1 in undistorted, stretched 3.8 %") {
        const double height = inches_over_lens(1.0) - inches_over_lens(-1.0);
        check_close(height, 40.0 * 12.0 + 7.0, printed_digits(0));
        check_close(undistorted_inches(), 39.0 * 12.0 + 1.0, printed_digits(0));
        check_close(100.0 * (height / undistorted_inches() - 1.0), 3.8, printed_digits(1));
    }

    TEST_CASE("golden: widths and keystone of the same case") {
        // Worked from the paper's case by similar triangles: 0.825 / 1.181 times the distance
        // along the axis of top edge, axis and bottom edge.
        check_close(width_ft(1.0), 68.837, printed_digits(3));
        check_close(width_ft(0.0), 72.320, printed_digits(3));
        check_close(width_ft(-1.0), 76.174, printed_digits(3));
        const auto shape = picture::picture_shape(paper_map(), kAperture);
        REQUIRE(shape);
        check_close(100.0 * shape->keystone_vertical, 10.119, printed_digits(3));
        // By other denominators the same keystone reads 10.658 % of the top, 9.632 % of the bottom.
        check_close(100.0 * (width_ft(-1.0) / width_ft(1.0) - 1.0), 10.658, printed_digits(3));
        check_close(100.0 * (1.0 - width_ft(1.0) / width_ft(-1.0)), 9.632, printed_digits(3));
    }
}
