// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "light/light_study.hpp"

#include <random>

/// Rooms for the tests of light: one projector, one format, and some seats.
namespace rakeline::tests {

struct LitRoom {
    room::Screen screen;
    room::Format format;
    room::Projector projector;
    double booth_wall_back_m = 18.0;
    std::vector<glm::dvec3> eyes;
    std::optional<int> reference_seat;
};

inline picture::PictureStudy picture_of(const LitRoom& r) {
    picture::PictureInput in;
    in.screen = r.screen;
    in.formats = {r.format};
    in.projectors = {r.projector};
    in.booth_wall_back_m = r.booth_wall_back_m;
    return picture::study_picture(in);
}

inline light::LightStudy light_of(const LitRoom& r) {
    return light::study_light({.screen = r.screen,
                               .projectors = {r.projector},
                               .eyes = r.eyes,
                               .reference_seat = r.reference_seat},
                              picture_of(r));
}

/// Flat screen of the format's own size, the lens opposite the picture's centre, an even gate of
/// the picture's shape wholly in use, no port glass, one eye on the lens axis.
inline LitRoom square_on_room(double width_m, double aspect_ratio) {
    LitRoom r;
    r.screen.width_m = width_m;
    r.screen.height_m = width_m / aspect_ratio;
    r.format.aspect_ratio = aspect_ratio;
    r.projector.kind = room::SourceKind::digital;
    r.projector.up_m = r.screen.sill_m + 0.5 * r.screen.height_m;
    r.projector.port.panes = 0;
    r.projector.imager = {2000, static_cast<int>(std::lround(2000.0 / aspect_ratio)), 10e-6};
    r.projector.flux.measured_flux_lm = 10000.0;
    r.projector.flux.corner_fraction = 1.0;
    room::FormatUse use;
    use.format = r.format.name;
    use.pixels_wide = r.projector.imager.pixels_wide;
    use.pixels_high = r.projector.imager.pixels_high;
    r.projector.formats = {use};
    r.eyes = {{0.0, r.projector.up_m, 9.0}};
    r.reference_seat = 0;
    return r;
}

/// As above with a film gate of exactly the picture's shape (an imager has whole pixels).
inline LitRoom square_on_film_room(double width_m, double aspect_ratio) {
    LitRoom r = square_on_room(width_m, aspect_ratio);
    r.projector.kind = room::SourceKind::film;
    r.projector.lit_width_m = 0.021;
    r.projector.lit_height_m = 0.021 / aspect_ratio;
    r.projector.formats.front().gate_width_m = r.projector.lit_width_m;
    r.projector.formats.front().gate_height_m = r.projector.lit_height_m;
    return r;
}

namespace detail {

inline void random_projector(LitRoom& r, std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    room::Projector& p = r.projector;
    const bool film = unit(random) < 0.5;
    p.kind = film ? room::SourceKind::film : room::SourceKind::digital;
    p.across_m = 3.0 * unit(random) - 1.5;
    p.up_m = 2.0 + 5.0 * unit(random);
    p.back_m = r.screen.setback_m + r.screen.width_m * (1.2 + 1.5 * unit(random));
    p.aim.roll_rad = base::radians(2.0 * unit(random) - 1.0);
    p.port.panes = 1 + static_cast<int>(2.0 * unit(random));
    p.flux.measured_flux_lm = 4000.0 + 20000.0 * unit(random);
    p.flux.corner_fraction = 0.5 + 0.5 * unit(random);
    p.flux.hot_spot_across = 0.3 * unit(random) - 0.15;
    p.flux.hot_spot_up = 0.3 * unit(random) - 0.15;
    room::FormatUse use;
    use.format = r.format.name;
    use.gate_width_m = 0.0205;
    use.gate_height_m = use.gate_width_m / r.format.aspect_ratio;
    use.pixels_wide = 1990;
    use.pixels_high = static_cast<int>(1990.0 / r.format.aspect_ratio);
    use.shift_up = 0.1 * unit(random) - 0.05;
    p.formats = {use};
    r.booth_wall_back_m = p.back_m - 0.4;
}

}  // namespace detail

/// A room of any make: flat or curved, tilted or upright, film or digital, with twelve seats.
inline LitRoom random_room(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    LitRoom r;
    r.screen.width_m = 6.0 + 14.0 * unit(random);
    r.format.aspect_ratio = 1.85 + 0.54 * unit(random);
    r.screen.height_m = r.screen.width_m / r.format.aspect_ratio;
    if (unit(random) < 0.5) r.screen.radius_m = r.screen.width_m * (1.5 + 2.0 * unit(random));
    r.screen.tilt_rad = base::radians(6.0 * unit(random) - 3.0);
    detail::random_projector(r, random);
    for (int i = 0; i < 12; ++i) {
        r.eyes.emplace_back(r.screen.width_m * (unit(random) - 0.5), 1.1 + 2.5 * unit(random),
                            r.screen.setback_m + r.screen.width_m * (0.6 + unit(random)));
    }
    r.reference_seat = 5;
    return r;
}

inline room::ScreenSurface random_lobe(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    room::ScreenSurface surface;
    surface.lobe = unit(random) < 0.5 ? room::LobeKind::mirror : room::LobeKind::retro;
    surface.peak_gain = 1.2 + 2.0 * unit(random);
    surface.matte_gain = 0.5 * unit(random);
    surface.half_gain_angle_rad = base::radians(15.0 + 30.0 * unit(random));
    if (unit(random) < 0.3) surface.retro_gain = 0.5 * unit(random);
    return surface;
}

/// Measured gains that fall from the lobe's middle outward.
inline room::ScreenSurface random_measured(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    room::ScreenSurface surface = random_lobe(random);
    double gain = surface.peak_gain;
    for (const double degrees : {0.0, 10.0, 20.0, 35.0, 60.0}) {
        surface.gain_table.push_back({base::radians(degrees), gain});
        gain *= 0.5 + 0.5 * unit(random);
    }
    return surface;
}

}  // namespace rakeline::tests
