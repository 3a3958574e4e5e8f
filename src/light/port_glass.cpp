// SPDX-License-Identifier: MIT
#include "light/port_glass.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"

#include <cmath>

namespace rakeline::light {
namespace {

/// Reflectance of one surface for both polarisations: electric field across (s) and in (p) the
/// plane of incidence.
struct SurfaceReflectance {
    double s = 0.0;
    double p = 0.0;
};

struct Pane {
    double transmittance = 1.0;
    double reflectance = 0.0;
};

/// Fresnel's equations for light from air onto the glass.
SurfaceReflectance fresnel(double index, double cos_outside, double cos_inside) {
    const double s = (cos_outside - index * cos_inside) / (cos_outside + index * cos_inside);
    const double p = (index * cos_outside - cos_inside) / (index * cos_outside + cos_inside);
    return {s * s, p * p};
}

/// Sum of the light that leaves a pane after 0, 2, 4 ... (transmitted) and 0, 1, 3 ... (reflected)
/// bounces inside: geometric series of ratio R^2 t^2.
Pane single_pane(double surface_reflectance, double internal_transmittance) {
    const double r = surface_reflectance;
    const double t = internal_transmittance;
    const double bounces = 1.0 / (1.0 - r * r * t * t);
    const double transmittance = (1.0 - r) * (1.0 - r) * t * bounces;
    return {transmittance, r + (1.0 - r) * (1.0 - r) * r * t * t * bounces};
}

/// One more pane behind a stack; the light between the two bounces, ratio R_stack R_pane. Both are
/// alike from either side, since all panes are the same.
Pane added(const Pane& stack, const Pane& pane) {
    const double bounces = 1.0 / (1.0 - stack.reflectance * pane.reflectance);
    return {
        stack.transmittance * pane.transmittance * bounces,
        stack.reflectance + stack.transmittance * stack.transmittance * pane.reflectance * bounces};
}

double stack_transmittance(const Pane& pane, int panes) {
    Pane stack;
    for (int i = 0; i < panes; ++i)
        stack = added(stack, pane);
    return stack.transmittance;
}

}  // namespace

double port_transmittance(const PortGlass& glass, double incidence_rad) {
    RL_ASSERT(incidence_rad >= 0.0 && incidence_rad < 0.5 * base::kPi);
    RL_ASSERT(glass.index >= 1.0 && glass.panes >= 0);
    if (glass.panes == 0) return 1.0;

    // The slanted path inside, by Snell's law.
    const double sin_inside = std::sin(incidence_rad) / glass.index;
    const double cos_inside = std::sqrt(1.0 - sin_inside * sin_inside);
    const double path_m = glass.thickness_m / cos_inside;
    const double internal = std::exp(-glass.absorption_per_m * path_m);

    SurfaceReflectance r = fresnel(glass.index, std::cos(incidence_rad), cos_inside);
    if (glass.coated_reflectance) r = {*glass.coated_reflectance, *glass.coated_reflectance};
    return 0.5 * (stack_transmittance(single_pane(r.s, internal), glass.panes) +
                  stack_transmittance(single_pane(r.p, internal), glass.panes));
}

}  // namespace rakeline::light
