// SPDX-License-Identifier: MIT
#include "light/gate_light.hpp"

#include "base/assert.hpp"

#include <glm/common.hpp>
#include <glm/geometric.hpp>

#include <algorithm>
#include <cmath>

namespace rakeline::light {
namespace {

/// The k of rel = 1 - k r^2, 1/m^2.
double fall_off_per_m2(const GateLight& light) {
    const glm::dvec2 half = 0.5 * light.lit_size_m;
    return (1.0 - light.corner_fraction) / glm::dot(half, half);
}

/// Integral of 1 - k (x^2 + y^2) over [0, x] x [0, y]: xy - k (x^3 y + x y^3) / 3.
double paraboloid_integral(double x, double y, double k) {
    return x * y * (1.0 - k * (x * x + y * y) / 3.0);
}

/// Antiderivative of (R^2 - u^2)^(3/2) that is 0 at 0, for 0 <= u <= R:
/// u h^3 / 4 + 3 R^2 u h / 8 + 3 R^4 asin(u/R) / 8 with h = sqrt(R^2 - u^2).
double cap_antiderivative(double u, double radius) {
    const double h = std::sqrt(std::max(0.0, radius * radius - u * u));
    const double r2 = radius * radius;
    return 0.25 * u * h * h * h + 0.375 * r2 * u * h +
           0.375 * r2 * r2 * std::asin(std::min(1.0, u / radius));
}

/// Integral of max(0, 1 - k r^2) over [0, x] x [0, y], x and y >= 0, k >= 0.
///
/// Inside the circle R = 1/sqrt(k) the law is the paraboloid. Where the rectangle's corner lies
/// outside it, the rectangle is cut at u = a, the place where its top edge leaves the circle: left
/// of a the paraboloid over the full height, right of it under the circle, where the inner integral
/// is that of k (h^2 - v^2) over 0 ... h = sqrt(R^2 - u^2), which is 2 k h^3 / 3.
double quadrant_integral(double x, double y, double k) {
    if (k * (x * x + y * y) <= 1.0) return paraboloid_integral(x, y, k);
    const double radius = 1.0 / std::sqrt(k);
    const double top = std::min(y, radius);
    const double right = std::min(x, radius);
    const double leaves = std::min(right, std::sqrt(std::max(0.0, radius * radius - top * top)));
    const double under_circle =
        cap_antiderivative(right, radius) - cap_antiderivative(leaves, radius);
    return paraboloid_integral(leaves, top, k) + 2.0 / 3.0 * k * under_circle;
}

/// The same from the hot spot to any corner; odd in x and in y, as an integral over [0, x] x [0, y]
/// of an even function is.
double corner_integral(glm::dvec2 corner, double k) {
    const double size = quadrant_integral(std::abs(corner.x), std::abs(corner.y), k);
    return std::signbit(corner.x) == std::signbit(corner.y) ? size : -size;
}

}  // namespace

GateLight gate_light(const room::Projector& projector) {
    GateLight light;
    if (projector.kind == room::SourceKind::digital) {
        const room::Imager& imager = projector.imager;
        light.lit_size_m =
            imager.pixel_pitch_m * glm::dvec2(imager.pixels_wide, imager.pixels_high);
    } else {
        light.lit_size_m = {projector.lit_width_m, projector.lit_height_m};
    }
    const room::FluxChain& flux = projector.flux;
    light.hot_spot_m = light.lit_size_m * glm::dvec2(flux.hot_spot_across, flux.hot_spot_up);
    light.corner_fraction = flux.corner_fraction;
    return light;
}

double relative_illuminance(const GateLight& light, glm::dvec2 gate_m) {
    const glm::dvec2 half = 0.5 * light.lit_size_m;
    if (std::abs(gate_m.x) > half.x || std::abs(gate_m.y) > half.y) return 0.0;
    const glm::dvec2 off = gate_m - light.hot_spot_m;
    return std::max(0.0, 1.0 - fall_off_per_m2(light) * glm::dot(off, off));
}

double lit_integral_m2(const GateLight& light, glm::dvec2 size_m) {
    RL_ASSERT(light.lit_size_m.x > 0.0 && light.lit_size_m.y > 0.0);
    RL_ASSERT(light.corner_fraction >= 0.0 && light.corner_fraction <= 1.0);
    const double k = fall_off_per_m2(light);
    const glm::dvec2 half = 0.5 * glm::min(size_m, light.lit_size_m);
    const glm::dvec2 low = -half - light.hot_spot_m;
    const glm::dvec2 high = half - light.hot_spot_m;
    return corner_integral(high, k) - corner_integral({low.x, high.y}, k) -
           corner_integral({high.x, low.y}, k) + corner_integral(low, k);
}

double use_fraction(const GateLight& light, glm::dvec2 size_m) {
    return lit_integral_m2(light, size_m) / lit_integral_m2(light, light.lit_size_m);
}

}  // namespace rakeline::light
