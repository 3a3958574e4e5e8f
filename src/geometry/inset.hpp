// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <span>
#include <vector>

namespace rakeline::geometry {

/// The polygon shrunk by `distance` on every side: each side moves inward along its own normal and
/// meets its neighbours again; sides that shrink to nothing on the way are dropped. `polygon` goes
/// counter-clockwise and is convex or bows inward only gently (at a corner that turns inward by a
/// small angle e the mitre stands off by distance e^2 / 8). Empty where nothing is left.
/// Source: derived below: intersection of consecutive side lines, each moved by `distance`.
std::vector<glm::dvec2> inset(std::span<const glm::dvec2> polygon, double distance);

}  // namespace rakeline::geometry
