// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "geometry/polygon.hpp"

#include <optional>
#include <span>
#include <vector>

/// What an eye sees, on a flat page.
namespace rakeline::drawing {

/// Perspective from `eye` onto the plane through `target` across the line of sight, so that
/// straight edges stay straight and lengths near the target are true:
///
///     x = D (p - e).r / (p - e).a,   y = D (p - e).u / (p - e).a
///
/// e the eye, a the unit direction to the target, r and u the unit directions to the right and
/// upward across it, D the distance from eye to target. Metres; (0, 0) is the target. It holds for
/// what lies before the eye; everything is clipped to the window first, and that ends at
/// kWidestTangent. Source: central projection, derived from the definition.
class EyeProjection {
public:
    /// The window is set by frame(); until then it is as wide as it can be.
    EyeProjection(const glm::dvec3& eye, const glm::dvec3& target, const glm::dvec3& if_vertical);

    /// Makes the window hold these points with `margin` (left, right, bottom, top: of the larger of
    /// the points' extents) around them, as far as the widest field lets it.
    void frame(std::span<const glm::dvec3> points, const geometry::Rectangle& margin);

    /// A closed outline, clipped; empty where none of it is in the window. A concave one may come
    /// back with coincident edges along the border.
    std::vector<glm::dvec2> outline(std::span<const glm::dvec3> points) const;
    /// An open line's pieces in the window.
    std::vector<std::vector<glm::dvec2>> line(std::span<const glm::dvec3> points) const;
    /// Nothing where it lies outside the window.
    std::optional<glm::dvec2> point(const glm::dvec3& p) const;

    /// Right, up and ahead of the eye, m.
    glm::dvec3 seen(const glm::dvec3& p) const;
    const geometry::Rectangle& window() const { return window_; }
    const glm::dvec3& eye() const { return eye_; }

    static constexpr double kWidestTangent = 3.732;  ///< 75 degrees to either side
    static constexpr double kNearest_m = 0.02;

private:
    struct Side {  ///< inside where dot(normal, seen) >= offset
        glm::dvec3 normal;
        double offset;
    };
    std::vector<Side> sides() const;
    glm::dvec2 on_page(const glm::dvec3& seen) const;

    glm::dvec3 eye_, right_, up_, ahead_;
    double distance_m_;
    geometry::Rectangle window_;  ///< on the page
};

}  // namespace rakeline::drawing
