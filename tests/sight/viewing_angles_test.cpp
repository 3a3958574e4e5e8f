// SPDX-License-Identifier: MIT
#include "sight/viewing_angles.hpp"

#include "base/units.hpp"
#include "sight/test_picture.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>
#include <vector>

using namespace rakeline;
using sight::viewing_angles;
using sight::ViewingAngles;
using tests::absolute;
using tests::between;
using tests::check_close;
using tests::Picture;
using tests::picture_of;
using tests::relative;
using tests::Shape;

namespace {

const auto kRounding = absolute(1e-11, "rounding of angles and distances of order ten");

Picture random_picture(std::mt19937& random) {
    Shape shape;
    shape.width_m = between(random, 5.0, 20.0);
    shape.height_m = between(random, 2.0, 9.0);
    shape.sill_m = between(random, 0.5, 2.0);
    shape.setback_m = between(random, 0.5, 2.0);
    shape.radius_m = random() % 2 ? between(random, 15.0, 60.0) : 0.0;
    shape.tilt_rad = between(random, -0.05, 0.15);
    return picture_of(shape);
}

glm::dvec3 random_eye(std::mt19937& random) {
    return {between(random, -8.0, 8.0), between(random, 0.8, 6.0), between(random, 5.0, 30.0)};
}

/// Angle at `eye` from the three sides of the triangle: no cross product, no atan2.
double angle_by_sides(const glm::dvec3& eye, const glm::dvec3& p, const glm::dvec3& q) {
    const double a = glm::distance(eye, p);
    const double b = glm::distance(eye, q);
    const double c = glm::distance(p, q);
    return std::acos((a * a + b * b - c * c) / (2.0 * a * b));
}

}  // namespace

TEST_SUITE("sight/viewing_angles") {
    TEST_CASE("a picture seen squarely from its middle subtends 2 atan(W/2D) by 2 atan(H/2D)") {
        const Picture p = picture_of({});  // 12 by 5 m, its centre 3 m up
        for (const double distance : {3.0, 6.0, 12.0, 40.0}) {
            const ViewingAngles a = viewing_angles(p.surface, p.opening, {0.0, 3.0, distance});
            check_close(a.subtended_width, 2.0 * std::atan(6.0 / distance), kRounding);
            check_close(a.subtended_height, 2.0 * std::atan(2.5 / distance), kRounding);
            check_close(a.elevation_centre, 0.0, kRounding);
            check_close(a.off_axis, 0.0, kRounding);
            check_close(a.distance_m, distance, kRounding);
            check_close(a.distance_widths, distance / 12.0, kRounding);
            check_close(a.distance_heights, distance / 5.0, kRounding);
        }
    }

    TEST_CASE("an eye off the middle height sees a true angle smaller than the angle in plan") {
        const Picture p = picture_of({});  // 12 by 5 m, its centre 3 m up
        const ViewingAngles a = viewing_angles(p.surface, p.opening, {0.0, 1.0, 6.0});
        // The side edges' mid-points are 6 m aside, 2 m up and 6 m ahead.
        check_close(a.subtended_width, std::acos((-36.0 + 4.0 + 36.0) / 76.0), kRounding);
        CHECK(a.subtended_width < 2.0 * std::atan(1.0));
    }

    TEST_CASE("elevations count from horizontal, negative for an eye above") {
        const Picture p = picture_of({});  // 12 by 5 m, its centre 3 m up
        const ViewingAngles low = viewing_angles(p.surface, p.opening, {3.0, 1.0, 4.0});
        check_close(low.elevation_top, std::atan2(4.5, 5.0), kRounding);
        check_close(low.elevation_centre, std::atan2(2.0, 5.0), kRounding);
        const ViewingAngles high = viewing_angles(p.surface, p.opening, {0.0, 6.5, 10.0});
        check_close(high.elevation_top, std::atan2(-1.0, 10.0), kRounding);
    }

    TEST_CASE("the picture's bottom is looked up to from below it and down on from above") {
        const Picture p = picture_of({});  // its lower edge 0.5 m up
        const ViewingAngles low = viewing_angles(p.surface, p.opening, {3.0, 0.2, 4.0});
        check_close(low.elevation_bottom, std::atan2(0.3, 5.0), kRounding);
        const ViewingAngles high = viewing_angles(p.surface, p.opening, {0.0, 6.5, 10.0});
        check_close(high.elevation_bottom, std::atan2(-6.0, 10.0), kRounding);
    }

    TEST_CASE("the side edges look as high as their distances make them") {
        const Picture p = picture_of({});  // 12 by 5 m, its centre 3 m up
        const ViewingAngles a = viewing_angles(p.surface, p.opening, {4.0, 3.0, 6.0});
        const double left = 2.0 * std::atan(2.5 / std::hypot(10.0, 6.0));
        const double right = 2.0 * std::atan(2.5 / std::hypot(2.0, 6.0));
        check_close(a.edge_left, left, kRounding);
        check_close(a.edge_right, right, kRounding);
        check_close(a.apparent_keystone(), 2.0 * (right - left) / (right + left), kRounding);
        CHECK(a.apparent_keystone() > 0.0);  // it sits at the right, so the right edge is larger
        check_close(viewing_angles(p.surface, p.opening, {0.0, 1.2, 9.0}).apparent_keystone(), 0.0,
                    kRounding);
    }

    TEST_CASE("a head turns by the angle between its seat's facing and the picture's centre") {
        const Picture p = picture_of({});
        const glm::dvec3 eye(3.0, 1.2, 4.0);
        const double off = std::atan2(3.0, 4.0);
        const auto turn = [&](double facing_rad) {
            // Turned to the left of the screen's wall, as seen from the seat.
            return sight::head_turn(p.surface, p.opening, eye,
                                    {-std::sin(facing_rad), 0.0, -std::cos(facing_rad)});
        };
        check_close(turn(0.0), off, kRounding);
        check_close(turn(off), 0.0, kRounding);
        check_close(turn(-0.2), off + 0.2, kRounding);
        check_close(turn(off + 0.3), 0.3, kRounding);
    }

    TEST_CASE("property: straight rows before a flat upright screen turn heads by the off-axis") {
        std::mt19937 random(20260104);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260104");
            const Picture p = picture_of({.width_m = between(random, 5.0, 20.0)});
            const glm::dvec3 eye = random_eye(random);
            check_close(sight::head_turn(p.surface, p.opening, eye, {0.0, 0.0, -1.0}),
                        viewing_angles(p.surface, p.opening, eye).off_axis, kRounding);
        }
    }

    TEST_CASE("property: from far away both sides look alike, the nearer to it the farther") {
        std::mt19937 random(20260105);
        for (int i = 0; i < 100; ++i) {
            INFO("draw ", i, " of seed 20260105");
            const Picture p = random_picture(random);
            const glm::dvec3 eye = random_eye(random);
            const auto seen_at = [&](double times) {
                const glm::dvec3 away = p.surface.centre + times * (eye - p.surface.centre);
                return viewing_angles(p.surface, p.opening, away);
            };
            // Edges w apart differ in distance by w at most: 2 w / (2 d - w) bounds the keystone
            // of small angles.
            const ViewingAngles a = seen_at(100.0);
            CHECK(std::abs(a.apparent_keystone()) < 1.01 * p.opening.width_m / a.distance_m);
            CHECK(std::abs(seen_at(1000.0).apparent_keystone()) <
                  std::abs(a.apparent_keystone()) + 1e-12);
            check_close(a.subtended_height * a.distance_m,
                        seen_at(1000.0).subtended_height * seen_at(1000.0).distance_m,
                        relative(0.02, "the near part of the approach, one part in a hundred"));
        }
    }

    TEST_CASE("off-axis angles are taken in plan: the height of the eye does not enter") {
        const Picture p = picture_of({});  // 12 by 5 m, its centre 3 m up
        for (const double height : {0.0, 3.0, 9.0}) {
            const ViewingAngles a = viewing_angles(p.surface, p.opening, {4.0, height, 6.0});
            check_close(a.off_axis, std::atan2(4.0, 6.0), kRounding);
            check_close(a.off_axis_far, std::atan2(10.0, 6.0), kRounding);
        }
    }

    TEST_CASE("on a curved screen the far edge stands forward, the normal stays the centre's") {
        const Picture p = picture_of({.radius_m = 10.0});
        const double forward = 10.0 - std::sqrt(100.0 - 36.0);
        const ViewingAngles a = viewing_angles(p.surface, p.opening, {-3.0, 3.0, 7.0});
        check_close(a.off_axis, std::atan2(3.0, 7.0), kRounding);
        check_close(a.off_axis_far, std::atan2(9.0, 7.0 - forward), kRounding);
    }

    TEST_CASE("property: subtended angles agree with the triangle of eye and edge points") {
        std::mt19937 random(20260101);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260101");
            const Picture p = random_picture(random);
            const glm::dvec3 eye = random_eye(random);
            const ViewingAngles a = viewing_angles(p.surface, p.opening, eye);
            const auto at = [&](double across, double up) {
                return picture::opening_point(p.surface, p.opening, across, up);
            };
            const auto tolerance = absolute(1e-7, "acos loses digits for small angles");
            check_close(a.subtended_width, angle_by_sides(eye, at(-1, 0), at(1, 0)), tolerance);
            check_close(a.subtended_height, angle_by_sides(eye, at(0, -1), at(0, 1)), tolerance);
        }
    }

    TEST_CASE("property: a seat and its mirror image have the picture alike") {
        std::mt19937 random(20260102);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260102");
            const Picture p = random_picture(random);
            const glm::dvec3 eye = random_eye(random);
            const ViewingAngles a = viewing_angles(p.surface, p.opening, eye);
            const ViewingAngles b = viewing_angles(p.surface, p.opening, {-eye.x, eye.y, eye.z});
            check_close(a.subtended_width, b.subtended_width, kRounding);
            check_close(a.subtended_height, b.subtended_height, kRounding);
            check_close(a.elevation_top, b.elevation_top, kRounding);
            check_close(a.off_axis, b.off_axis, kRounding);
            check_close(a.off_axis_far, b.off_axis_far, kRounding);
            check_close(a.elevation_bottom, b.elevation_bottom, kRounding);
            check_close(a.edge_left, b.edge_right, kRounding);
            check_close(a.apparent_keystone(), -b.apparent_keystone(), kRounding);
            const glm::dvec3 facing = glm::normalize(glm::dvec3(between(random, -1, 1), 0, -1));
            check_close(sight::head_turn(p.surface, p.opening, eye, facing),
                        sight::head_turn(p.surface, p.opening, {-eye.x, eye.y, eye.z},
                                         {-facing.x, 0.0, facing.z}),
                        kRounding);
            CHECK(a.off_axis_far > a.off_axis);
        }
    }

    TEST_CASE("property: a room built twice as large shows every angle the same") {
        std::mt19937 random(20260103);
        for (int i = 0; i < 100; ++i) {
            INFO("draw ", i, " of seed 20260103");
            const Picture p = random_picture(random);
            Picture twice = p;
            twice.surface.centre *= 2.0;
            twice.surface.radius_m *= 2.0;
            geometry::Rectangle& uv = twice.opening.uv;
            uv = {2.0 * uv.left, 2.0 * uv.right, 2.0 * uv.bottom, 2.0 * uv.top};
            twice.opening.width_m *= 2.0;
            twice.opening.height_m *= 2.0;
            const glm::dvec3 eye = random_eye(random);
            const ViewingAngles a = viewing_angles(p.surface, p.opening, eye);
            const ViewingAngles b = viewing_angles(twice.surface, twice.opening, 2.0 * eye);
            check_close(b.subtended_width, a.subtended_width, kRounding);
            check_close(b.subtended_height, a.subtended_height, kRounding);
            check_close(b.elevation_top, a.elevation_top, kRounding);
            check_close(b.elevation_centre, a.elevation_centre, kRounding);
            check_close(b.off_axis_far, a.off_axis_far, kRounding);
            check_close(b.elevation_bottom, a.elevation_bottom, kRounding);
            check_close(b.apparent_keystone(), a.apparent_keystone(), kRounding);
            check_close(b.distance_m, 2.0 * a.distance_m, relative(1e-13, "rounding"));
            check_close(b.distance_heights, a.distance_heights, relative(1e-13, "rounding"));
        }
    }
}
