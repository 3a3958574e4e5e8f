// SPDX-License-Identifier: MIT
#include "sight/picture_detail.hpp"

#include "sight/test_picture.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>

using namespace rakeline;
using sight::element_angle;
using tests::between;
using tests::check_close;
using tests::relative;

namespace {

constexpr double kPixel_m = 13.68e-6;

/// A lens that looks squarely at a sheet through the origin.
picture::Pose square_pose(double throw_m, double image_distance_m) {
    picture::Pose pose;
    pose.lens = {0.0, 0.0, throw_m};
    pose.image_distance_m = image_distance_m;
    return pose;
}

picture::PictureMap flat_map(const picture::Pose& pose) {
    return {geometry::standing_patch({0, 0, 0}, 0.0, 0.0), pose};
}

const auto kTight = relative(1e-9, "differences of points some metres away, a pixel apart");

}  // namespace

TEST_SUITE("sight/picture_detail") {
    TEST_CASE("seen squarely a pixel is its width on the screen over the distance") {
        const auto map = flat_map(square_pose(20.0, 0.05));
        const double wide = kPixel_m * 20.0 / 0.05;
        for (const double distance : {2.0, 8.0, 25.0}) {
            const auto angle = element_angle(map, kPixel_m, {0.0, 0.0, distance});
            check_close(angle.value(), 2.0 * std::atan(0.5 * wide / distance), kTight);
        }
    }

    TEST_CASE("from the side a pixel is foreshortened") {
        const auto map = flat_map(square_pose(20.0, 0.05));
        const double half = 0.5 * kPixel_m * 20.0 / 0.05;
        const auto angle = element_angle(map, kPixel_m, {6.0, 0.0, 8.0});
        check_close(angle.value(), std::atan((6.0 + half) / 8.0) - std::atan((6.0 - half) / 8.0),
                    relative(1e-9, "a difference of two angles near one"));
        CHECK(*angle < 2.0 * half / 10.0);
    }

    TEST_CASE("an anamorphic lens stretches what it shows across") {
        picture::Pose pose = square_pose(20.0, 0.05);
        const auto plain = element_angle(flat_map(pose), 1e-5, {0, 0, 1e4});
        pose.squeeze = 2.0;
        const auto wide = element_angle(flat_map(pose), 1e-5, {0, 0, 1e4});
        check_close(wide.value(), 2.0 * plain.value(), kTight);
    }

    TEST_CASE("a lens that looks away from the screen shows no pixel") {
        picture::Pose pose = square_pose(20.0, 0.05);
        pose.axis = {0.0, 0.0, 1.0};
        CHECK_FALSE(element_angle(flat_map(pose), kPixel_m, {0, 0, 5}).has_value());
    }

    TEST_CASE("property: twice the distance halves the angle, and mirrored eyes see the same") {
        std::mt19937 random(20260106);
        const auto map = flat_map(square_pose(25.0, 0.06));
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260106");
            const glm::dvec3 eye(between(random, -8, 8), between(random, -2, 4),
                                 between(random, 3, 30));
            const double once = element_angle(map, kPixel_m, eye).value();
            check_close(element_angle(map, kPixel_m, 2.0 * eye).value(), 0.5 * once,
                        relative(1e-6, "a pixel is small against the distance, but not nothing"));
            check_close(element_angle(map, kPixel_m, {-eye.x, eye.y, eye.z}).value(), once, kTight);
        }
    }
}
