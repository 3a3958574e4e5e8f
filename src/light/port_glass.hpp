// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

/// The glass between booth and hall.
namespace rakeline::light {

struct PortGlass {
    int panes = 1;                             ///< 0 or more; 0 is an open port
    double index = 1.52;                       ///< relative to air, 1 or more
    double thickness_m = 0.006;                ///< of one pane
    double absorption_per_m = 0.0;             ///< internal transmittance exp(-absorption * path)
    std::optional<double> coated_reflectance;  ///< per surface, both polarisations, 0 to below 1
};

/// Transmittance of the panes for unpolarised light at `incidence_rad` (0 <= incidence < pi/2).
///
///     sin i' = sin i / n,   t = exp(-absorption * thickness / cos i')
///     R_s = ((cos i - n cos i') / (cos i + n cos i'))^2
///     R_p = ((n cos i - cos i') / (n cos i + cos i'))^2        or the coated reflectance for both
///     pane, per polarisation:  T = (1-R)^2 t / (1 - R^2 t^2),  rho = R + (1-R)^2 R t^2 / (1 - R^2
///     t^2) one pane more:           T <- T T1 / (1 - rho rho1),     rho <- rho + T^2 rho1 / (1 -
///     rho rho1) then the mean of both polarisations
///
/// Inter-reflection inside a pane and between panes adds incoherently: panes are far thicker than
/// the light's coherence length. A coating's reflectance is taken as the same at every angle.
/// Source: Fresnel's equations; the sums are derived in the .cpp (geometric series of bounces).
/// Example: n = 1.52 at normal incidence, no absorption: 0.91832, two panes 0.84897.
double port_transmittance(const PortGlass& glass, double incidence_rad);

}  // namespace rakeline::light
