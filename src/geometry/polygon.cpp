// SPDX-License-Identifier: MIT
#include "geometry/polygon.hpp"

namespace rakeline::geometry {
namespace {

/// Keeps the side of the line on which `distance` is not negative.
template <class Distance>
std::vector<glm::dvec2> kept_side(const std::vector<glm::dvec2>& polygon, Distance distance) {
    std::vector<glm::dvec2> out;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 a = polygon[i];
        const glm::dvec2 b = polygon[(i + 1) % polygon.size()];
        const double da = distance(a);
        const double db = distance(b);
        if (da >= 0.0) out.push_back(a);
        if ((da < 0.0) != (db < 0.0)) out.push_back(a + (da / (da - db)) * (b - a));
    }
    return out;
}

}  // namespace

double signed_area(std::span<const glm::dvec2> polygon) {
    double twice = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 a = polygon[i];
        const glm::dvec2 b = polygon[(i + 1) % polygon.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return 0.5 * twice;
}

std::vector<glm::dvec2> clipped(std::span<const glm::dvec2> polygon, const Rectangle& window) {
    std::vector<glm::dvec2> out(polygon.begin(), polygon.end());
    out = kept_side(out, [&](glm::dvec2 p) { return p.x - window.left; });
    out = kept_side(out, [&](glm::dvec2 p) { return window.right - p.x; });
    out = kept_side(out, [&](glm::dvec2 p) { return p.y - window.bottom; });
    out = kept_side(out, [&](glm::dvec2 p) { return window.top - p.y; });
    return out;
}

}  // namespace rakeline::geometry
