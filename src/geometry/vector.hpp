// SPDX-License-Identifier: MIT
#pragma once

#include <glm/geometric.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>

#include <cmath>

/// Points and directions are glm::dvec3 in the room frame: x across to the right as seen from the
/// seats, y up, z back from the screen wall toward the booth; right-handed, metres.
namespace rakeline::geometry {

struct Ray {
    glm::dvec3 origin{0.0};
    glm::dvec3 direction{0.0, 0.0, -1.0};  ///< need not be of unit length unless a function says so

    glm::dvec3 at(double t) const { return origin + t * direction; }
};

/// Angle between two directions, rad, 0 to pi; exact near 0 and pi where acos loses digits.
inline double angle_between(const glm::dvec3& a, const glm::dvec3& b) {
    return std::atan2(glm::length(glm::cross(a, b)), glm::dot(a, b));
}

/// `p` turned by `angle_rad` about the vertical through the origin, counter-clockwise from above
/// (from z back toward x across).
inline glm::dvec3 turned_about_up(const glm::dvec3& p, double angle_rad) {
    const double c = std::cos(angle_rad);
    const double s = std::sin(angle_rad);
    return {c * p.x + s * p.z, p.y, c * p.z - s * p.x};
}

}  // namespace rakeline::geometry
