// SPDX-License-Identifier: MIT
#pragma once

#include "light/lit_room.hpp"
#include "light/meter_fit.hpp"

/// Readings made up in the rooms of light's tests.
namespace rakeline::tests {

inline light::MeterScene scene_of(const LitRoom& r) {
    const picture::PictureStudy pictures = picture_of(r);
    const light::LightStudy light = light_of(r);
    return light::meter_scene(r.screen, r.projector, pictures.pictures.front(),
                              pictures.openings.front(), light.lights.front());
}

/// Luminance from the first eye at the nine points of the opening, as the room's study has it.
inline std::vector<light::MeterReading> studied_readings(const LitRoom& r) {
    const picture::Opening opening = picture_of(r).openings.front();
    const light::PictureLight light = light_of(r).lights.front();
    const glm::dvec2 half = 0.5 * glm::dvec2(opening.uv.width(), opening.uv.height());
    std::vector<light::MeterReading> out;
    for (int i = 0; i < light::kPointCount; ++i) {
        const auto point = static_cast<light::PicturePoint>(i);
        const double read = light::luminance_cdm2(light, 0, point);
        if (read <= 0.0) continue;  // left dark by the picture
        out.push_back({.uv = opening.uv.centre() + half * light::point_place(point),
                       .incident = false,
                       .value = read,
                       .error = light::standard_error(light::kMeterAccuracy_cdm2),
                       .spot_rad = 0.0,
                       .eye = r.eyes.front()});
    }
    return out;
}

/// A room whose light falls off about a hot spot, bright enough to be metered.
inline LitRoom metered_room(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    LitRoom r = random_room(random);
    r.projector.flux.corner_fraction = 0.5 + 0.3 * unit(random);
    const double area = r.screen.width_m * r.screen.height_m;
    r.projector.flux.measured_flux_lm = (150.0 + 100.0 * unit(random)) * area;
    return r;
}

/// What a layout says that knows nothing of the lamp yet.
inline LitRoom unfitted(LitRoom r) {
    r.projector.flux.measured_flux_lm = 10000.0;
    r.projector.flux.corner_fraction = 0.9;
    r.projector.flux.hot_spot_across = r.projector.flux.hot_spot_up = 0.0;
    return r;
}

inline std::array<double, light::kLawParts> truth_of(const room::FluxChain& flux) {
    return {flux.measured_flux_lm, flux.corner_fraction, flux.hot_spot_across, flux.hot_spot_up};
}

}  // namespace rakeline::tests
