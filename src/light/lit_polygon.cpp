// SPDX-License-Identifier: MIT
#include "light/lit_polygon.hpp"

#include "base/assert.hpp"

#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace rakeline::light {
namespace {

/// Integral of max(0, 1 - k r^2) over the triangle of the origin and two points, k >= 0; negative
/// where it runs clockwise.
///
/// Along the side from `from` to `to`, d from the origin at its foot and s from there, the angle
/// dphi = d ds / (d^2 + s^2) sweeps the integral of (1 - k r^2) r dr up to r^2 = d^2 + s^2, which
/// is r^2/2 - k r^4/4; so
///
///     (d/2 - k d^3/4) (b - a) - k d (b^3 - a^3) / 12      for a <= s <= b inside R = 1/sqrt(k),
///
/// and beyond R, where the law is 0, the sector's angle over 4 k.
double fan_integral(glm::dvec2 from, glm::dvec2 to, double k) {
    const double length = glm::length(to - from);
    if (length == 0.0) return 0.0;
    const glm::dvec2 along = (to - from) / length;
    const double d = from.x * along.y - from.y * along.x;
    const double first = glm::dot(from, along);
    const double last = first + length;
    // The side's part inside R; without fall-off there is no R.
    const double reach = k > 0.0 ? std::sqrt(std::max(0.0, 1.0 / k - d * d))
                                 : std::numeric_limits<double>::infinity();
    const double a = std::clamp(first, -reach, reach);
    const double b = std::clamp(last, -reach, reach);
    const double inside =
        (0.5 * d - 0.25 * k * d * d * d) * (b - a) - k * d * (b * b * b - a * a * a) / 12.0;
    if (a == first && b == last) return inside;
    const auto angle = [d](double s, double t) { return std::atan2(d * (t - s), d * d + s * t); };
    return inside + (angle(first, a) + angle(b, last)) / (4.0 * k);
}

}  // namespace

double fall_off_per_m2(const GateLight& light) {
    const glm::dvec2 half = 0.5 * light.lit_size_m;
    return (1.0 - light.corner_fraction) / glm::dot(half, half);
}

double lit_integral_m2(const GateLight& light, std::span<const glm::dvec2> polygon) {
    RL_ASSERT(light.lit_size_m.x > 0.0 && light.lit_size_m.y > 0.0);
    RL_ASSERT(light.corner_fraction >= 0.0 && light.corner_fraction <= 1.0);
    const double k = fall_off_per_m2(light);
    double sum = 0.0;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 next = polygon[(i + 1) % polygon.size()];
        sum += fan_integral(polygon[i] - light.hot_spot_m, next - light.hot_spot_m, k);
    }
    return sum;
}

}  // namespace rakeline::light
