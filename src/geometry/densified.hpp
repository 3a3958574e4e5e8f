// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <span>
#include <vector>

namespace rakeline::geometry {

/// The closed polygon with points put into its edges, evenly, so that none is longer than `step`
/// (> 0): what has to be done before a map that bends straight lines is laid on it.
std::vector<glm::dvec2> densified(std::span<const glm::dvec2> polygon, double step);

}  // namespace rakeline::geometry
