// SPDX-License-Identifier: MIT
#include "geometry/densified.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::geometry {

std::vector<glm::dvec2> densified(std::span<const glm::dvec2> polygon, double step) {
    RL_ASSERT(step > 0.0);
    std::vector<glm::dvec2> out;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 edge = polygon[(i + 1) % polygon.size()] - polygon[i];
        const int parts = std::max(1, static_cast<int>(std::ceil(glm::length(edge) / step)));
        for (int k = 0; k < parts; ++k) {
            out.push_back(polygon[i] + (static_cast<double>(k) / parts) * edge);
        }
    }
    return out;
}

}  // namespace rakeline::geometry
