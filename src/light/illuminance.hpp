// SPDX-License-Identifier: MIT
#pragma once

#include "light/gate_light.hpp"
#include "picture/picture_map.hpp"

/// Illuminance on the picture surface from the flux through the gate.
namespace rakeline::light {

/// The light of one picture.
struct Beam {
    picture::PictureMap map;
    GateLight gate;
    glm::dvec2 part_size_m{0.0};  ///< of the gate in use, centred
    double whole_flux_lm = 0.0;   ///< behind the port, whole lit gate or imager in use
};

/// Illuminance at a surface point, lx,
///
///     E = Phi rel(g) / (integral of rel over the lit area * J(g)),   g = the gate point that
///     lights
///                                                                    the surface point
///       J  area on the surface over area in the gate, from the map
///
/// and 0 where g lies outside the part in use or no gate point lights the surface point. Obliquity,
/// distance, keystone and curvature are all in J: flux through a gate patch arrives on the patch's
/// image, so no separate cosine is due. Hence an even gate gives exactly even light on a square-on
/// plane (J is constant there): whatever cos^4 law the lens or condenser follows belongs to the
/// gate's own fall-off, corner_fraction. Source: conservation of flux along the map.
class Illuminance {
public:
    explicit Illuminance(const Beam& beam);

    double at_lx(glm::dvec2 uv) const;

private:
    Beam beam_;
    double peak_lm_m2_ = 0.0;  ///< flux per gate area at the hot spot
};

}  // namespace rakeline::light
