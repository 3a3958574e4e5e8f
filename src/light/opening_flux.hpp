// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/polygon.hpp"
#include "light/illuminance.hpp"

/// How much of a picture's light falls into its opening; the rest lights the masking.
namespace rakeline::light {

/// Flux onto a rectangle of the surface (coordinates of geometry::Patch, m), lm.
///
/// Flux is conserved along the map, so what falls into the rectangle is what leaves the gate inside
/// the rectangle's image there: its border, kBorderSteps points an edge, is mapped back to the gate
/// and cut to the part that is lit and in use, over which the gate's light integrates in closed
/// form (lit_integral_m2). Exact on a plane, whose straight lines stay straight; on a cylinder
/// within 1e-6 of the whole flux (tests, against adaptive quadrature of the illuminance). Points of
/// the border that the lens can't light lie outside every picture and are passed over.
/// Source: conservation of flux along the map.
double flux_onto(const Beam& beam, const geometry::Rectangle& uv);

inline constexpr int kBorderSteps = 256;

}  // namespace rakeline::light
