// SPDX-License-Identifier: MIT
#include "light/gate_light.hpp"

#include "light/lit_polygon.hpp"

#include <glm/common.hpp>
#include <glm/geometric.hpp>

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::light {
namespace {

std::array<glm::dvec2, 4> corners(glm::dvec2 half) {
    return {-half, {half.x, -half.y}, half, {-half.x, half.y}};
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
    return lit_integral_m2(light, corners(0.5 * glm::min(size_m, light.lit_size_m)));
}

double use_fraction(const GateLight& light, glm::dvec2 size_m) {
    return lit_integral_m2(light, size_m) / lit_integral_m2(light, light.lit_size_m);
}

}  // namespace rakeline::light
