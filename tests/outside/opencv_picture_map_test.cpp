// SPDX-License-Identifier: MIT
// Source: OpenCV 4.6 as a reference library: getPerspectiveTransform and findHomography for the
// map onto a plane, projectPoints (a pinhole camera in the lens) for planes and cylinders.
#include "base/units.hpp"
#include "geometry/homography.hpp"
#include "picture/any_room.hpp"
#include "picture/picture_map.hpp"
#include "support/check.hpp"

#include <array>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>
#include <random>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

constexpr glm::dvec2 kHalfGate{0.010, 0.006};

class MapDice : public Dice {
public:
    using Dice::Dice;
    glm::dvec2 gate_point() {
        return {between(-kHalfGate.x, kHalfGate.x), between(-kHalfGate.y, kHalfGate.y)};
    }
    picture::PictureMap map(double radius_m) {
        const glm::dvec3 lens(between(-3, 3), between(2, 9), between(18, 30));
        picture::Pose pose = picture::aimed_pose(lens, -lens.x / lens.z + between(-0.05, 0.05),
                                                 between(0.0, 0.3), between(-0.1, 0.1));
        pose.image_distance_m = between(0.03, 0.09);
        pose.squeeze = between(1.0, 2.0);
        pose.shift_m = {between(-0.003, 0.003), between(-0.003, 0.003)};
        const double tilt = base::radians(between(-5, 10));
        return {geometry::standing_patch({0, 3, 1}, radius_m, tilt), pose};
    }
};

cv::Point2f millimetres(glm::dvec2 gate_m) {
    return {static_cast<float>(1e3 * gate_m.x), static_cast<float>(1e3 * gate_m.y)};
}
cv::Point2f metres(glm::dvec2 uv) {
    return {static_cast<float>(uv.x), static_cast<float>(uv.y)};
}

/// The point of the surface that a reference homography (from gate millimetres) gives.
glm::dvec2 mapped_by(const cv::Mat& h, glm::dvec2 gate_m) {
    const cv::Matx33d m = h;
    const cv::Vec3d p = m * cv::Vec3d(1e3 * gate_m.x, 1e3 * gate_m.y, 1.0);
    return {p[0] / p[2], p[1] / p[2]};
}

/// Gate coordinates of room points by the reference pinhole camera, whose x runs right, y down and
/// z along the axis.
std::vector<cv::Point2d> seen_from_lens(const picture::Pose& pose,
                                        const std::vector<cv::Point3d>& points) {
    const glm::dvec3 x = pose.right;
    const glm::dvec3 y = -pose.up;
    const glm::dvec3 z = pose.axis;
    const cv::Matx33d camera_from_room(x.x, x.y, x.z, y.x, y.y, y.z, z.x, z.y, z.z);
    cv::Vec3d turn;
    cv::Rodrigues(camera_from_room, turn);
    const cv::Vec3d offset = -(camera_from_room * cv::Vec3d(pose.lens.x, pose.lens.y, pose.lens.z));
    const double b = pose.image_distance_m;
    const cv::Matx33d camera(b / pose.squeeze, 0, -pose.shift_m.x, 0, b, pose.shift_m.y, 0, 0, 1);
    std::vector<cv::Point2d> seen;
    cv::projectPoints(points, turn, offset, camera, cv::noArray(), seen);
    return seen;
}

/// Lights the surface from these gate points, and looks from the lens where the light fell.
void check_against_camera(const picture::PictureMap& map, const std::vector<glm::dvec2>& gate) {
    std::vector<cv::Point3d> lit;
    for (const glm::dvec2 from : gate) {
        const auto uv = map.screen_from_gate(from);
        REQUIRE(uv);
        const glm::dvec3 p = geometry::point_at(map.surface(), *uv);
        lit.emplace_back(p.x, p.y, p.z);
    }
    const auto seen = seen_from_lens(map.pose(), lit);
    for (std::size_t k = 0; k < gate.size(); ++k) {
        const Tolerance rounding = absolute(1e-13, "a millionth of a pixel and less");
        check_close(gate[k].x, seen[k].x, rounding);
        check_close(gate[k].y, -seen[k].y, rounding);
    }
}

void check_against_camera(const picture::PictureMap& map, MapDice& dice) {
    std::vector<glm::dvec2> gate(20);
    for (glm::dvec2& point : gate)
        point = dice.gate_point();
    check_against_camera(map, gate);
}

}  // namespace

TEST_SUITE("outside/opencv_picture_map") {
    TEST_CASE("golden: getPerspectiveTransform from the four corners is the map onto a plane") {
        MapDice dice(81);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 81, case ", i);
            const auto map = dice.map(0.0);
            std::array<cv::Point2f, 4> from;
            std::array<cv::Point2f, 4> to;
            for (std::size_t k = 0; k < 4; ++k) {
                const glm::dvec2 corner =
                    kHalfGate * glm::dvec2(k % 3 == 0 ? -1 : 1, k < 2 ? -1 : 1);
                from[k] = millimetres(corner);
                to[k] = metres(*map.screen_from_gate(corner));
            }
            const cv::Mat reference = cv::getPerspectiveTransform(from.data(), to.data());
            for (int k = 0; k < 10; ++k) {
                const glm::dvec2 gate = dice.gate_point();
                const glm::dvec2 off = *map.screen_from_gate(gate) - mapped_by(reference, gate);
                check_close(glm::length(off), 0.0,
                            absolute(1e-5, "the library takes corners in single precision"));
            }
        }
    }

    TEST_CASE("golden: findHomography over many points is the closed form") {
        MapDice dice(82);
        for (int i = 0; i < 100; ++i) {
            INFO("seed 82, case ", i);
            const auto map = dice.map(0.0);
            std::vector<cv::Point2f> from;
            std::vector<cv::Point2f> to;
            for (int k = 0; k < 40; ++k) {
                const glm::dvec2 gate = dice.gate_point();
                from.push_back(millimetres(gate));
                to.push_back(metres(*map.screen_from_gate(gate)));
            }
            const cv::Mat reference = cv::findHomography(from, to);
            const auto ours = map.homography();
            REQUIRE(ours);
            for (int k = 0; k < 10; ++k) {
                const glm::dvec2 gate = dice.gate_point();
                const glm::dvec2 off = *geometry::mapped(*ours, gate) - mapped_by(reference, gate);
                check_close(glm::length(off), 0.0,
                            absolute(1e-5, "the library takes points in single precision"));
            }
        }
    }

    TEST_CASE(
        "golden: a pinhole camera in the lens sees each lit point of a plane at its gate point") {
        MapDice dice(83);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 83, case ", i);
            check_against_camera(dice.map(0.0), dice);
        }
    }

    TEST_CASE("golden: and each lit point of a curved screen") {
        MapDice dice(84);
        for (int i = 0; i < 200; ++i) {
            INFO("seed 84, case ", i);
            check_against_camera(dice.map(dice.between(14.0, 40.0)), dice);
        }
    }

    TEST_CASE("golden: and the picture of any valid room, rolled 45 degrees, shifted, squeezed") {
        Dice dice(85);
        for_rooms(86, 2000, [&](const room::Layout&, const picture::ProjectedPicture& p) {
            std::vector<glm::dvec2> gate{gate_point(p, -1, 1), gate_point(p, 1, -1)};
            for (int k = 0; k < 4; ++k)
                gate.push_back(gate_point(p, dice.between(-1, 1), dice.between(-1, 1)));
            check_against_camera(p.map, gate);
        });
    }
}
