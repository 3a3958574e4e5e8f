// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <array>
#include <vector>

/// Lines of equal value over triangles, the value linear on each.
namespace rakeline::drawing {

struct ValueMesh {
    std::vector<glm::dvec2> points;
    std::vector<double> values;  ///< parallel to `points`
    std::vector<std::array<int, 3>> triangles;
};

/// Where the mesh passes `level`, as lines that are as long as they can be; a closed one ends where
/// it began. A value of just the level counts as above it.
std::vector<std::vector<glm::dvec2>> contours(const ValueMesh& mesh, double level);

/// Round numbers (1, 2 or 5 times a power of ten apart) strictly between two values: `count` at
/// most, and as many as that allows.
std::vector<double> round_levels(double least, double most, double count = 8.0);

}  // namespace rakeline::drawing
