// SPDX-License-Identifier: MIT
#pragma once

#include "light/gate_light.hpp"

#include <span>

/// The gate's light over any part of it.
namespace rakeline::light {

/// The k of rel = max(0, 1 - k r^2), 1/m^2: (1 - corner_fraction) / r_corner^2.
double fall_off_per_m2(const GateLight& light);

/// Integral of the relative illuminance over a polygon within the lit area, m^2; positive when its
/// corners go counter-clockwise. In closed form, the clamp included. Source: derived in the .cpp.
double lit_integral_m2(const GateLight& light, std::span<const glm::dvec2> polygon);

}  // namespace rakeline::light
