// SPDX-License-Identifier: MIT
#include "picture/focus.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rakeline::picture {
namespace {

/// Places across where the distance along the axis can be least or greatest: the edges, and on a
/// cylinder where it turns. With u = r t the surface stands at
///     r sin t across + r (1 - cos t) normal
/// from its centre line, so the distance changes by r (A cos t + B sin t), A = across . axis and
/// B = normal . axis, which is nought where tan t = -A / B.
std::vector<double> turning_places(const geometry::Patch& surface,
                                   const glm::dvec3& axis,
                                   const geometry::Rectangle& opening) {
    std::vector<double> places{opening.left, opening.right};
    if (surface.flat()) return places;
    const double b = glm::dot(surface.normal, axis);
    if (b == 0.0) return places;  // it turns at the rim of the half cylinder, outside any opening
    const double u = surface.radius_m * std::atan(-glm::dot(surface.across, axis) / b);
    if (u > opening.left && u < opening.right) places.push_back(u);
    return places;
}

}  // namespace

double blur(double pupil_m, double distance_m, double focused_m) {
    RL_ASSERT(focused_m > 0.0);
    return pupil_m * std::abs(distance_m - focused_m) / focused_m;
}

std::optional<Focus> best_focus(const PictureMap& map, const Opening& opening, double f_number) {
    RL_ASSERT(f_number > 0.0);
    const Pose& pose = map.pose();
    std::vector<double> distances;
    for (const double u : turning_places(map.surface(), pose.axis, opening.uv)) {
        for (const double v : {opening.uv.bottom, opening.uv.top}) {
            const glm::dvec3 point = geometry::point_at(map.surface(), {u, v});
            distances.push_back(glm::dot(point - pose.lens, pose.axis));
        }
    }
    const auto [least, greatest] = std::minmax_element(distances.begin(), distances.end());
    if (!(*least > 0.0)) return std::nullopt;
    Focus focus{.pupil_m = pose.focal_length_m / f_number,
                .nearest_m = *least,
                .farthest_m = *greatest,
                .best_m = 0.5 * (*least + *greatest)};
    focus.worst_blur_m = blur(focus.pupil_m, focus.farthest_m, focus.best_m);
    return focus;
}

std::optional<double> pixel_size(const PictureMap& map, double pixel_pitch_m) {
    const auto ratio = map.area_ratio({0.0, 0.0});
    if (!ratio) return std::nullopt;
    return pixel_pitch_m * std::sqrt(*ratio);
}

}  // namespace rakeline::picture
