// SPDX-License-Identifier: MIT
// Source: the relation of Scheimpflug: through a thin lens a plane is imaged onto a plane, and both
// meet the lens's own plane in one line. With the screen's normal at the angle q to the lens axis
// and T along the axis, the sharp image leans by phi in the gate: tan phi = tan q / M', M' = T / f
// - 1. Textbook optics; the form with M' worked from it.
#include "base/units.hpp"
#include "picture/focus.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

constexpr double kThrow = 18.0;
constexpr double kFocalLength = 0.06;
constexpr double kPupil = kFocalLength / 2.0;

/// Lens 6 m up, its axis level; the screen leans back by `lean_rad` about its level line at the
/// axis.
picture::PictureMap leaning(double lean_rad) {
    picture::Pose pose = picture::aimed_pose({0.0, 6.0, kThrow}, 0.0, 0.0, 0.0);
    pose.focal_length_m = kFocalLength;
    pose.image_distance_m = picture::image_distance(kFocalLength, kThrow);
    return {geometry::standing_patch({0.0, 6.0, 0.0}, 0.0, lean_rad), pose};
}

double distance(const picture::PictureMap& map, glm::dvec2 uv) {
    return glm::dot(geometry::point_at(map.surface(), uv) - map.pose().lens, map.pose().axis);
}

}  // namespace

TEST_SUITE("outside/scheimpflug") {
    TEST_CASE("golden: an upright gate blurs by how far the leaning image stands off from it") {
        for (const double lean_deg : {1.0, 5.0, 12.0, 20.0}) {
            const auto map = leaning(base::radians(lean_deg));
            const double gate_m = map.pose().image_distance_m;
            const double tan_phi =
                std::tan(base::radians(lean_deg)) / (kThrow / kFocalLength - 1.0);
            for (const glm::dvec2 uv :
                 {glm::dvec2(0.0, 2.0), glm::dvec2(4.0, 2.0), glm::dvec2(-5.0, -3.0)}) {
                INFO("lean ", lean_deg, " degrees, at ", uv.x, ", ", uv.y);
                const auto gate = map.gate_from_screen(uv);
                REQUIRE(gate);
                // The image leans off by |y'| tan phi, y' = y b' / b0: a cone of the pupil's width
                // and length b' is then a |y| tan phi / b0 wide in the gate.
                const double blurred =
                    picture::gate_blur(kPupil, kFocalLength, distance(map, uv), kThrow);
                check_close(blurred, kPupil * std::abs(gate->y) * tan_phi / gate_m,
                            relative(1e-9, "rounding of the difference of distances"));
            }
        }
    }

    TEST_CASE("golden: screen, lens and sharp image meet in one line") {
        const double lean = base::radians(8.0);
        const auto map = leaning(lean);
        // Behind the lens the image of the screen's upright centre line, point by point.
        const auto image = [&](double v) {
            const double d = distance(map, {0.0, v});
            const double height = geometry::point_at(map.surface(), {0.0, v}).y - map.pose().lens.y;
            const double behind = picture::image_distance(kFocalLength, d);
            return glm::dvec2(behind, -height * behind / d);
        };
        const glm::dvec2 low = image(-3.0);
        const glm::dvec2 high = image(3.0);
        const double at_lens = low.y + (high.y - low.y) * (0.0 - low.x) / (high.x - low.x);
        // The screen, leaning back from the axis at 18 m, comes to the lens at -18 m / tan q.
        check_close(at_lens, -kThrow / std::tan(lean),
                    relative(1e-9, "a line through near points"));
    }

    TEST_CASE("square to the axis is the limit in which nothing leans and nothing blurs") {
        const auto map = leaning(0.0);
        CHECK(picture::gate_blur(kPupil, kFocalLength, distance(map, {4.0, 2.0}), kThrow) == 0.0);
    }
}
