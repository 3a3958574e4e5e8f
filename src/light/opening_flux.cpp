// SPDX-License-Identifier: MIT
#include "light/opening_flux.hpp"

#include "light/lit_polygon.hpp"

#include <glm/common.hpp>

#include <array>

namespace rakeline::light {
namespace {

/// The rectangle's border in the gate, counter-clockwise as the rectangle's own.
std::vector<glm::dvec2> border_in_gate(const picture::PictureMap& map,
                                       const geometry::Rectangle& uv) {
    const std::array<glm::dvec2, 4> corners{
        {{uv.left, uv.bottom}, {uv.right, uv.bottom}, {uv.right, uv.top}, {uv.left, uv.top}}};
    std::vector<glm::dvec2> gate;
    gate.reserve(corners.size() * kBorderSteps);
    for (std::size_t edge = 0; edge < corners.size(); ++edge) {
        const glm::dvec2 from = corners[edge];
        const glm::dvec2 way = corners[(edge + 1) % corners.size()] - from;
        for (int step = 0; step < kBorderSteps; ++step) {
            const double share = static_cast<double>(step) / kBorderSteps;
            if (const auto lit = map.gate_from_screen(from + share * way)) gate.push_back(*lit);
        }
    }
    return gate;
}

}  // namespace

double flux_onto(const Beam& beam, const geometry::Rectangle& uv) {
    const glm::dvec2 half = 0.5 * glm::min(beam.part_size_m, beam.gate.lit_size_m);
    const std::vector<glm::dvec2> border = border_in_gate(beam.map, uv);
    const std::vector<glm::dvec2> lit =
        geometry::clipped(border, {-half.x, half.x, -half.y, half.y});
    return beam.whole_flux_lm * lit_integral_m2(beam.gate, lit) /
           lit_integral_m2(beam.gate, beam.gate.lit_size_m);
}

}  // namespace rakeline::light
