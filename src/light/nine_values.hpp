// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <array>

/// What nine values on a grid say of what lies between them.
namespace rakeline::light {

/// Values at the places (x, y), each -1, 0 or 1: row by row from the lower left.
using NineValues = std::array<double, 9>;

/// Place of the i-th value.
inline glm::dvec2 nine_place(int i) {
    return {i % 3 - 1, i / 3 - 1};
}

/// Value at a place within [-1, 1]^2 of the surface through all nine, quadratic along x and along
/// y. Exact where the values come from such a surface.
double through_nine(const NineValues& values, const glm::dvec2& place);

/// Highest place within [-1, 1]^2 of the quadratic form with the slopes and bends of the nine at
/// their middle (central differences): the exact top where the values are quadratic. An even field
/// gives the middle.
glm::dvec2 top_of_nine(const NineValues& values);

}  // namespace rakeline::light
