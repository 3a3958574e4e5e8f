// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <glm/vec2.hpp>

/// How the light is spread over the gate or imager: a smooth fall-off about a hot spot.
///
/// Gate coordinates are those of picture::PictureMap: metres, x to the picture's right, y to its
/// top, origin at the centre of the part in use. The lit area is centred on the same origin.
namespace rakeline::light {

struct GateLight {
    glm::dvec2 lit_size_m{0.0};    ///< film: what the lamp lights; digital: the whole imager
    glm::dvec2 hot_spot_m{0.0};    ///< where the illuminance has its peak
    double corner_fraction = 1.0;  ///< illuminance at a lit corner over a centred peak, 0 to 1
};

/// The hot spot's offset is in widths and heights of the lit area.
GateLight gate_light(const room::Projector& projector);

/// Gate illuminance over its peak,
///
///     rel = max(0, 1 - (1 - corner_fraction) (r / r_corner)^2),   0 outside the lit area
///       r         distance from the hot spot, m
///       r_corner  half the lit area's diagonal, m
///
/// so that with the hot spot at the centre the lit corners have corner_fraction of the peak. With
/// the hot spot well off the centre the far corner can reach 0, where the law is clamped.
/// Source: our own form: the first term of any smooth even fall-off; departs from a real lens or
/// condenser in the higher terms.
double relative_illuminance(const GateLight& light, glm::dvec2 gate_m);

/// Integral of the relative illuminance over the centred part of `size_m` of the gate, as far as it
/// is lit, m^2. In closed form, the clamp included. Source: derived in the .cpp.
double lit_integral_m2(const GateLight& light, glm::dvec2 size_m);

/// Flux through the centred part of `size_m` over the flux through the whole lit area, 0 to 1.
double use_fraction(const GateLight& light, glm::dvec2 size_m);

}  // namespace rakeline::light
