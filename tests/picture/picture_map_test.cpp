// SPDX-License-Identifier: MIT
#include "picture/picture_map.hpp"

#include "geometry/homography.hpp"
#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using picture::PictureMap;
using picture::Pose;

namespace {

void check_vector(const glm::dvec3& actual, const glm::dvec3& expected) {
    check_close(glm::length(actual - expected), 0.0, absolute(1e-14, "rounding"));
}

/// 10 m before a flat upright screen, on its normal.
Pose square_on(double focal_length_m) {
    Pose pose = picture::aimed_pose({0.0, 3.0, 11.0}, 0.0, 0.0, 0.0);
    pose.focal_length_m = focal_length_m;
    pose.image_distance_m = picture::image_distance(focal_length_m, 10.0);
    return pose;
}

const geometry::Patch kFlat = geometry::standing_patch({0.0, 3.0, 1.0}, 0.0, 0.0);

/// Area that a small square in the gate lights, over its own, by the corners' map.
double area_by_differences(const PictureMap& map, glm::dvec2 gate, double step) {
    const auto column = [&](glm::dvec2 h) {
        return (*map.screen_from_gate(gate + h) - *map.screen_from_gate(gate - h)) / (2.0 * step);
    };
    const glm::dvec2 a = column({step, 0.0});
    const glm::dvec2 b = column({0.0, step});
    return a.x * b.y - a.y * b.x;
}

}  // namespace

TEST_SUITE("picture/picture_map") {
    TEST_CASE("an unturned projector looks straight at the screen wall") {
        const Pose pose = picture::aimed_pose({1, 2, 3}, 0.0, 0.0, 0.0);
        check_vector(pose.axis, {0, 0, -1});
        check_vector(pose.right, {1, 0, 0});
        check_vector(pose.up, {0, 1, 0});
        check_vector(pose.lens, {1, 2, 3});
    }

    TEST_CASE("yaw turns the axis to the right, pitch down, roll the picture clockwise") {
        const double quarter = base::radians(90.0);
        check_vector(picture::aimed_pose({}, quarter, 0.0, 0.0).axis, {1, 0, 0});
        check_vector(picture::aimed_pose({}, quarter, 0.0, 0.0).right, {0, 0, 1});
        check_vector(picture::aimed_pose({}, 0.0, quarter, 0.0).axis, {0, -1, 0});
        check_vector(picture::aimed_pose({}, 0.0, quarter, 0.0).up, {0, 0, -1});
        // Clockwise as seen from the seats: the top goes to the right, the right side down.
        check_vector(picture::aimed_pose({}, 0.0, 0.0, quarter).up, {1, 0, 0});
        check_vector(picture::aimed_pose({}, 0.0, 0.0, quarter).right, {0, -1, 0});
    }

    TEST_CASE("property: axes of a pose are unit and right-handed whatever the turns") {
        Dice dice(41);
        for (int i = 0; i < 1000; ++i) {
            const Pose p = picture::aimed_pose({}, dice.between(-3, 3), dice.between(-1.5, 1.5),
                                               dice.between(-3, 3));
            check_close(glm::length(p.right), 1.0, absolute(1e-14, "rounding"));
            check_vector(glm::cross(p.right, p.up), -p.axis);
            check_vector(glm::cross(p.up, -p.axis), p.right);
        }
    }

    TEST_CASE("square-on, the map is the thin lens") {
        const double f = 0.05;
        const PictureMap map(kFlat, square_on(f));
        const double gate = 0.02;
        const auto right = map.screen_from_gate({0.5 * gate, 0.0});
        const auto top = map.screen_from_gate({0.0, 0.004});
        REQUIRE(right);
        REQUIRE(top);
        check_close(right->x, 0.5 * picture::picture_width(gate, 10.0, f),
                    relative(1e-13, "rounding"));
        check_close(right->y, 0.0, absolute(1e-13, "rounding"));
        check_close(top->y, picture::picture_width(0.004, 10.0, f), relative(1e-13, "rounding"));
    }

    TEST_CASE("anamorphic stretches across alone; shift moves the picture its own way") {
        Pose pose = square_on(0.05);
        const double scale = 10.0 / pose.image_distance_m;
        pose.squeeze = 2.0;
        pose.shift_m = {0.001, 0.002};
        const auto uv = PictureMap(kFlat, pose).screen_from_gate({0.003, 0.005});
        REQUIRE(uv);
        check_close(uv->x, 2.0 * 0.004 * scale, relative(1e-12, "rounding"));
        check_close(uv->y, 0.007 * scale, relative(1e-12, "rounding"));
    }

    TEST_CASE("property: the area ratio is the Jacobian by finite differences") {
        Dice dice(43);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 43, case ", i);
            const auto p = only_picture(random_room(dice));
            const glm::dvec2 gate = gate_point(p, dice.between(-1, 1), dice.between(-1, 1));
            const auto ratio = p.map.area_ratio(gate);
            REQUIRE(ratio);
            const double step = 1e-4 * p.gate_size_m.x;
            check_close(*ratio, area_by_differences(p.map, gate, step),
                        relative(1e-6, "central difference with 1e-4 steps"));
        }
    }

    TEST_CASE("property: a plane's homography is the map, its Jacobian the area ratio") {
        Dice dice(44);
        int flat = 0;
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 44, case ", i);
            const auto p = only_picture(random_room(dice));
            const auto h = p.map.homography();
            REQUIRE(h.has_value() == p.map.surface().flat());
            if (!h) continue;
            ++flat;
            const glm::dvec2 gate = gate_point(p, dice.between(-1, 1), dice.between(-1, 1));
            const auto by_h = geometry::mapped(*h, gate);
            REQUIRE(by_h);
            check_close(glm::length(*by_h - *p.map.screen_from_gate(gate)), 0.0,
                        absolute(1e-11, "rounding"));
            // d(u, v) / d(x, y) of a homography is det H / w^3.
            const double w = (*h * glm::dvec3(gate, 1.0)).z;
            check_close(*p.map.area_ratio(gate), glm::determinant(*h) / (w * w * w),
                        relative(1e-10, "rounding"));
        }
        CHECK(flat > 300);
    }

    TEST_CASE("refuses: points behind the lens have no gate point") {
        const PictureMap map(kFlat, picture::aimed_pose({0, 3, 11}, base::radians(80), 0, 0));
        // The axis runs 80 degrees to the right: the far left lies behind the lens.
        CHECK_FALSE(map.gate_from_screen({-100.0, 0.0}));
        CHECK(map.gate_from_screen({100.0, 0.0}));
    }

    TEST_CASE("refuses: a projector behind the screen lights nothing") {
        const PictureMap map(kFlat, picture::aimed_pose({0, 3, -5}, base::radians(180), 0, 0));
        CHECK_FALSE(map.screen_from_gate({0.0, 0.0}));
        CHECK_FALSE(map.gate_from_screen({0.0, 0.0}));
        CHECK_FALSE(map.area_ratio({0.0, 0.0}));
    }

    TEST_CASE("refuses: a curved screen's near side shows its back to a lens outside") {
        const auto curved = geometry::standing_patch({0, 0, 0}, 10.0, 0.0);
        // At the left of the cylinder, looking right: in through the left side, out by the right.
        const PictureMap map(curved, picture::aimed_pose({-20, 0, 5}, base::radians(90), 0, 0));
        const auto uv = map.screen_from_gate({0.0, 0.0});
        REQUIRE(uv);
        CHECK(uv->x > 0.0);
        CHECK(map.gate_from_screen(*uv));
        CHECK_FALSE(map.gate_from_screen({-uv->x, 0.0}));
    }

    TEST_CASE("refuses: beyond the half cylinder there is no screen") {
        const auto curved = geometry::standing_patch({0, 0, 0}, 10.0, 0.0);
        const PictureMap map(curved, picture::aimed_pose({0, 0, 10}, base::radians(89), 0, 0));
        const double edge = 5.0 * base::kPi;
        CHECK(map.gate_from_screen({edge - 0.01, 0.0}));
        CHECK_FALSE(map.gate_from_screen({edge + 0.01, 0.0}));
        CHECK(map.screen_from_gate({0.0, 0.0}));
        CHECK_FALSE(map.screen_from_gate({0.01, 0.0}));  // 11 degrees farther right
    }

    TEST_CASE("a projector inside the cylinder lights the whole half by its own rays") {
        const auto curved = geometry::standing_patch({0, 0, 0}, 10.0, 0.0);
        Pose pose = picture::aimed_pose({0, 0, 10}, 0, 0, 0);
        const PictureMap map(curved, pose);
        // From the axis every ray arrives square-on: arc = angle times radius.
        const double x = pose.image_distance_m * std::tan(1.2);
        const auto uv = map.screen_from_gate({x, 0.0});
        REQUIRE(uv);
        check_close(uv->x, 12.0, relative(1e-12, "rounding"));
        check_close(*map.area_ratio({0.0, 0.0}),
                    100.0 / (pose.image_distance_m * pose.image_distance_m),
                    relative(1e-12, "rounding"));
    }
}
