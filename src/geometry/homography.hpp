// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <glm/mat3x3.hpp>

#include <optional>

/// Plane-to-plane perspective maps, as 3x3 matrices on (x, y, 1).
namespace rakeline::geometry {

/// Image of `p`; nothing where the map sends it to infinity.
inline std::optional<glm::dvec2> mapped(const glm::dmat3& homography, glm::dvec2 p) {
    const glm::dvec3 h = homography * glm::dvec3(p, 1.0);
    if (h.z == 0.0) return std::nullopt;
    return glm::dvec2(h.x / h.z, h.y / h.z);
}

}  // namespace rakeline::geometry
