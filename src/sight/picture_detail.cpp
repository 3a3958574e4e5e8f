// SPDX-License-Identifier: MIT
#include "sight/picture_detail.hpp"

namespace rakeline::sight {

std::optional<double> element_angle(const picture::PictureMap& map,
                                    double element_m,
                                    const glm::dvec3& eye) {
    const auto right = map.screen_from_gate({0.5 * element_m, 0.0});
    const auto left = map.screen_from_gate({-0.5 * element_m, 0.0});
    if (!right || !left) return std::nullopt;
    return geometry::angle_between(geometry::point_at(map.surface(), *left) - eye,
                                   geometry::point_at(map.surface(), *right) - eye);
}

}  // namespace rakeline::sight
