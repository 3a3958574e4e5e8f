// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

namespace rakeline::light {

struct PortGlass {
    int panes = 1;
    double index = 1.52;                       ///< relative to air
    double thickness_m = 0.006;                ///< of one pane
    double absorption_per_m = 0.0;             ///< internal transmittance exp(-absorption * path)
    std::optional<double> coated_reflectance;  ///< per surface, both polarisations
};

/// Transmittance of the panes for unpolarised light at `incidence_rad` (0 <= incidence < pi/2).
///
/// Per pane and polarisation T = (1-R)^2 t / (1 - R^2 t^2), t the internal transmittance on the
/// slanted path, inter-reflection incoherent; panes likewise add their inter-reflection; then the
/// mean of both polarisations. Source: Fresnel's equations; n = 1.52 at normal incidence: 0.91832.
double port_transmittance(const PortGlass& glass, double incidence_rad);

}  // namespace rakeline::light
