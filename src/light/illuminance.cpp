// SPDX-License-Identifier: MIT
#include "light/illuminance.hpp"

#include <cmath>
#include <optional>

namespace rakeline::light {

Illuminance::Illuminance(const Beam& beam)
    : beam_(beam),
      peak_lm_m2_(beam.whole_flux_lm / lit_integral_m2(beam.gate, beam.gate.lit_size_m)) {}

double Illuminance::at_lx(glm::dvec2 uv) const {
    const std::optional<glm::dvec2> gate = beam_.map.gate_from_screen(uv);
    if (!gate) return 0.0;
    const glm::dvec2 half = 0.5 * beam_.part_size_m;
    if (std::abs(gate->x) > half.x || std::abs(gate->y) > half.y) return 0.0;
    const std::optional<double> spread = beam_.map.area_ratio(*gate);
    if (!spread) return 0.0;
    return peak_lm_m2_ * relative_illuminance(beam_.gate, *gate) / *spread;
}

}  // namespace rakeline::light
