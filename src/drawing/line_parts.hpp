// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/polygon.hpp"

#include <array>
#include <vector>

/// Distances, and parts of open lines, so that lettering can stand in a gap.
namespace rakeline::drawing {

double distance_to_segment(glm::dvec2 p, glm::dvec2 a, glm::dvec2 b);

double length_of(const std::vector<glm::dvec2>& line);

/// The part of a line before `from` and the one after `to`, lengths along it; a part that has no
/// length may have one point.
std::array<std::vector<glm::dvec2>, 2> around_gap(const std::vector<glm::dvec2>& line,
                                                  double from,
                                                  double to);

/// The runs of a line outside a box, found in steps of `step_m` at most: take it much smaller than
/// the box. Runs of no length may have one point or none.
std::vector<std::vector<glm::dvec2>> outside(const std::vector<glm::dvec2>& line,
                                             const geometry::Rectangle& box,
                                             double step_m);

}  // namespace rakeline::drawing
