// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <span>
#include <vector>

namespace rakeline::geometry {

/// Area by the shoelace sum: positive when the corners go counter-clockwise.
double signed_area(std::span<const glm::dvec2> polygon);

struct Rectangle {
    double left = 0.0, right = 0.0, bottom = 0.0, top = 0.0;

    double width() const { return right - left; }
    double height() const { return top - bottom; }
    double area() const { return width() * height(); }
    glm::dvec2 centre() const { return {0.5 * (left + right), 0.5 * (bottom + top)}; }
    bool operator==(const Rectangle&) const = default;
};

/// The part of a simple polygon inside the rectangle (Sutherland and Hodgman, 1974). A concave
/// polygon may come back with coincident edges along the border; its area is right all the same.
std::vector<glm::dvec2> clipped(std::span<const glm::dvec2> polygon, const Rectangle& window);

}  // namespace rakeline::geometry
