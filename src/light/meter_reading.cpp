// SPDX-License-Identifier: MIT
#include "light/meter_reading.hpp"

#include "room/perforation.hpp"

#include <cmath>

namespace rakeline::light {

MeterScene meter_scene(const room::Screen& screen,
                       const room::Projector& projector,
                       const picture::ProjectedPicture& picture,
                       const picture::Opening& opening,
                       const PictureLight& light) {
    // The layout's flux is that of lens and iris at their most; the format's setting comes after.
    const double full_lm = light.chain_flux_lm / light.setting_fraction;
    return {.map = picture.map,
            .opening = opening.uv,
            .part_size_m = picture.gate_size_m,
            .gate = gate_light(projector),
            .surface = screen.surface,
            .open_area = room::open_area(screen.perforation),
            .lens_flux_lm = full_lm,
            .passed_fraction = light.flux_lm / (full_lm * light.use_fraction)};
}

double standard_error(double accuracy) {
    return accuracy / std::sqrt(3.0);
}

}  // namespace rakeline::light
