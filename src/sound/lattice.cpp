// SPDX-License-Identifier: MIT
#include "sound/lattice.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// From one side of the pixel to the other, across the gate's direction `along`.
std::optional<glm::dvec2> step(const picture::PictureMap& map,
                               glm::dvec2 gate_m,
                               glm::dvec2 along_m) {
    const auto to = map.screen_from_gate(gate_m + 0.5 * along_m);
    const auto from = map.screen_from_gate(gate_m - 0.5 * along_m);
    if (!to || !from) return std::nullopt;
    return *to - *from;
}

}  // namespace

Reciprocal reciprocal(const Lattice& lattice) {
    const double area = lattice.a.x * lattice.b.y - lattice.a.y * lattice.b.x;
    RL_ASSERT(area != 0.0);
    return {glm::dvec2(lattice.b.y, -lattice.b.x) / area,
            glm::dvec2(-lattice.a.y, lattice.a.x) / area};
}

double lowest_frequency(const Reciprocal& reciprocal) {
    return std::min({glm::length(reciprocal.a), glm::length(reciprocal.b),
                     glm::length(reciprocal.at(1, 1)), glm::length(reciprocal.at(1, -1))});
}

Lattice hole_lattice(const room::Perforation& perforation) {
    RL_ASSERT(perforation.pattern != room::PerforationPattern::none);
    const bool staggered = perforation.pattern == room::PerforationPattern::staggered;
    const double between = staggered ? base::kPi / 3.0 : base::kPi / 2.0;
    const auto row = [&](double angle) {
        return perforation.pitch_m * glm::dvec2(std::cos(angle), std::sin(angle));
    };
    return {row(-perforation.angle_rad), row(between - perforation.angle_rad)};
}

std::optional<Lattice> pixel_lattice(const picture::PictureMap& map,
                                     double pixel_m,
                                     glm::dvec2 uv) {
    const auto gate = map.gate_from_screen(uv);
    if (!gate) return std::nullopt;
    const auto a = step(map, *gate, {pixel_m, 0.0});
    const auto b = step(map, *gate, {0.0, pixel_m});
    if (!a || !b) return std::nullopt;
    return Lattice{*a, *b};
}

}  // namespace rakeline::sound
