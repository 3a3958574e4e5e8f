// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/polygon.hpp"
#include "light/illuminance.hpp"

/// How much of a picture's light falls into its opening; the rest lights the masking.
namespace rakeline::light {

/// Flux onto a rectangle of the surface (coordinates of geometry::Patch, m), lm: illuminance summed
/// over the middles of kFluxCells by kFluxCells equal cells, each times its area (a cylinder
/// unrolls without stretching). Where the picture fills the rectangle the error is below 1e-3 of
/// the flux (tests); where its rim crosses cells, of the order of a cell's share, 1 / kFluxCells.
/// Source: midpoint rule.
double flux_onto(const Illuminance& illuminance, const geometry::Rectangle& uv);

inline constexpr int kFluxCells = 24;

}  // namespace rakeline::light
