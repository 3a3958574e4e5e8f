// SPDX-License-Identifier: MIT
#include "light/opening_flux.hpp"

namespace rakeline::light {

double flux_onto(const Illuminance& illuminance, const geometry::Rectangle& uv) {
    const glm::dvec2 size(uv.width(), uv.height());
    const glm::dvec2 corner = uv.centre() - 0.5 * size;
    const glm::dvec2 cell = size / static_cast<double>(kFluxCells);
    double sum_lx = 0.0;
    for (int row = 0; row < kFluxCells; ++row) {
        for (int column = 0; column < kFluxCells; ++column)
            sum_lx += illuminance.at_lx(corner + cell * glm::dvec2(column + 0.5, row + 0.5));
    }
    return sum_lx * cell.x * cell.y;
}

}  // namespace rakeline::light
