// SPDX-License-Identifier: MIT
#pragma once

#include "picture/focus.hpp"

#include <vector>

/// Where on the opening the picture is out of focus by how much: polygons and contours for drawing.
namespace rakeline::drawing {

/// Part of the opening that lies at least so far behind (or before) a plane square to the axis.
struct BlurBand {
    std::vector<std::vector<glm::dvec2>> polygons;  ///< surface coordinates, without overlap
    std::vector<std::vector<glm::dvec2>> contours;  ///< their rims inside the opening
};

enum class FocusSide { behind, before };

/// The opening's part whose distance along the axis is `distance_m` or more (behind), or
/// `distance_m` or less (before). The distance grows evenly with v along a generator, so a column
/// of the surface crosses it once at most; across, columns are set densely and wherever it crosses
/// the opening's upper or lower edge.
BlurBand blur_band(const picture::PictureMap& map,
                   const geometry::Rectangle& opening,
                   double distance_m,
                   FocusSide side);

/// Round numbers below `most` at even steps: three to seven of them, in shown units.
std::vector<double> round_steps(double most);

}  // namespace rakeline::drawing
