// SPDX-License-Identifier: MIT
#pragma once

#include "light/meter_reading.hpp"

#include <array>
#include <vector>

/// A reading as a function of the gate's light alone: the picture map, gain and spot worked in.
namespace rakeline::light {

/// The gate's light as a fit sees it.
enum LawPart { kPeak, kCorner, kAcross, kUp, kLawParts };
/// kPeak: flux density at the hot spot over that of the layout; kCorner: FluxChain's
/// corner_fraction; kAcross, kUp: hot spot in widths and heights of the lit gate.
using GateLaw = std::array<double, kLawParts>;

/// A direction of the meter's spot, on the gate.
struct SpotNode {
    glm::dvec2 gate{0.0};  ///< in widths and heights of the lit gate, from its centre
    double weight = 0.0;   ///< reading per relative gate illuminance there, at the layout's peak
};

/// One reading's spot on the gate. With n the node's place and h the hot spot, both in widths and
/// heights of the lit gate W x H,
///
///     reading = peak * sum over nodes of weight * rel,
///     rel     = max(0, 1 - (1 - corner) (a_x (n_x - h_x)^2 + a_y (n_y - h_y)^2))
///     a       = 4 (W^2, H^2) / (W^2 + H^2)
///
/// which is light::relative_illuminance written for n and h. Outside its bounds (corner over 1) the
/// law goes on smoothly, so that a search may pass there. Source: gate_light.hpp.
struct MeterSample {
    std::vector<SpotNode> nodes;
    glm::dvec2 axes{2.0};     ///< a
    double dark_share = 0.0;  ///< of the spot that falls on masking or on no picture
};

/// A point reading is one node. A spot is averaged over the solid angle of its cone: Gauss and
/// Legendre's five points in each of eight rings of 1 - cos, 64 directions round; the meter is
/// taken to weigh its acceptance angle evenly. Exact to 1e-9 where the spot is all in the picture,
/// to about 0.2 % of the whole where an edge crosses it.
MeterSample meter_sample(const MeterScene& scene, const MeterReading& reading);

double modelled(const MeterSample& sample, const GateLaw& law);

/// Derivatives of modelled() by the law's parts.
GateLaw modelled_slope(const MeterSample& sample, const GateLaw& law);

/// The law unclamped is linear in four numbers b, reading = b . moments:
///
///     moments = sum of weight * (1, -rho^2, n_x, n_y),   rho^2 = a_x n_x^2 + a_y n_y^2
///     b       = peak (1 - k a.h^2),  peak k,  2 peak k a_x h_x,  2 peak k a_y h_y,  k = 1 - corner
///
/// in the order of LawPart. What a set of readings can tell is seen in these.
std::array<double, kLawParts> moments(const MeterSample& sample);

}  // namespace rakeline::light
