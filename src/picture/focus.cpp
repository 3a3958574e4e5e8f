// SPDX-License-Identifier: MIT
#include "picture/focus.hpp"

#include "base/assert.hpp"
#include "picture/throw.hpp"

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

double distance_along_axis(const PictureMap& map, glm::dvec2 uv) {
    return glm::dot(geometry::point_at(map.surface(), uv) - map.pose().lens, map.pose().axis);
}

}  // namespace

double blur(double pupil_m, double distance_m, double focused_m) {
    RL_ASSERT(focused_m > 0.0);
    return pupil_m * std::abs(distance_m - focused_m) / focused_m;
}

double gate_blur(double pupil_m, double focal_length_m, double distance_m, double focused_m) {
    RL_ASSERT(distance_m > 0.0 && focused_m > focal_length_m);
    const double gate_m = image_distance(focal_length_m, focused_m);
    return blur(pupil_m, distance_m, focused_m) * gate_m / distance_m;
}

std::optional<Focus> best_focus(const PictureMap& map, const Opening& opening, double f_number) {
    RL_ASSERT(f_number > 0.0);
    const Pose& pose = map.pose();
    std::vector<double> distances;
    for (const double u : turning_places(map.surface(), pose.axis, opening.uv)) {
        for (const double v : {opening.uv.bottom, opening.uv.top}) {
            distances.push_back(distance_along_axis(map, {u, v}));
        }
    }
    const auto [least, greatest] = std::minmax_element(distances.begin(), distances.end());
    const double best = 0.5 * (*least + *greatest);
    if (!(*least > 0.0 && best > pose.focal_length_m)) return std::nullopt;
    Focus focus{.pupil_m = pose.focal_length_m / f_number,
                .nearest_m = *least,
                .farthest_m = *greatest,
                .best_m = best};
    focus.worst_blur_m = blur(focus.pupil_m, focus.farthest_m, focus.best_m);
    focus.worst_gate_blur_m =
        gate_blur(focus.pupil_m, pose.focal_length_m, focus.nearest_m, focus.best_m);
    return focus;
}

std::optional<double> blur_at(const PictureMap& map,
                              glm::dvec2 uv,
                              double pupil_m,
                              double focused_m) {
    const double distance = distance_along_axis(map, uv);
    if (!(distance > 0.0)) return std::nullopt;
    return blur(pupil_m, distance, focused_m);
}

double BlurField::at(int column, int row) const {
    RL_ASSERT(column >= 0 && column < columns && row >= 0 && row < rows);
    return blur_m[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                  static_cast<std::size_t>(column)];
}

BlurField blur_field(
    const PictureMap& map, const Opening& opening, const Focus& focus, int columns, int rows) {
    RL_ASSERT(columns >= 2 && rows >= 2);
    BlurField field{.columns = columns, .rows = rows, .blur_m = {}};
    const geometry::Rectangle& o = opening.uv;
    for (int row = 0; row < rows; ++row) {
        for (int column = 0; column < columns; ++column) {
            const glm::dvec2 uv(std::lerp(o.left, o.right, column / (columns - 1.0)),
                                std::lerp(o.bottom, o.top, row / (rows - 1.0)));
            const auto blurred = blur_at(map, uv, focus.pupil_m, focus.best_m);
            RL_ASSERT(blurred);
            field.blur_m.push_back(*blurred);
        }
    }
    return field;
}

std::optional<double> pixel_size(const PictureMap& map, double pixel_pitch_m) {
    const auto ratio = map.area_ratio({0.0, 0.0});
    if (!ratio) return std::nullopt;
    return pixel_pitch_m * std::sqrt(*ratio);
}

std::optional<double> detail_size(const PictureMap& map, double gate_m) {
    const auto ratio = map.area_ratio({0.0, 0.0});
    if (!ratio) return std::nullopt;
    return gate_m * std::sqrt(*ratio / map.pose().squeeze);
}

double film_detail(double resolution_lp_mm) {
    RL_ASSERT(resolution_lp_mm > 0.0);
    constexpr double kMetresPerMillimetre = 1e-3;
    return 0.5 * kMetresPerMillimetre / resolution_lp_mm;
}

}  // namespace rakeline::picture
