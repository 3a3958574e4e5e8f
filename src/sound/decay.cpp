// SPDX-License-Identifier: MIT
#include "sound/decay.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"
#include "sound/air_absorption.hpp"

#include <cmath>
#include <numbers>

namespace rakeline::sound {
namespace {

/// Decay by 60 dB: the energy falls to a millionth, ln 10^6 = 6 ln 10, over the mean free path of
/// 4 V / S between two reflections.
double seconds_a_metre(const Air& air) {
    return 24.0 * std::numbers::ln10 / air.sound_speed_m_s();
}

/// Absorption area of all surfaces in one band.
double surfaces_m2(const room::HallSurfaces& hall, const room::Acoustics& a, std::size_t band) {
    return hall.screen_wall_m2 * a.screen_wall.by_octave[band] +
           hall.side_walls_m2 * a.side_walls.by_octave[band] +
           hall.rear_wall_m2 * a.rear_wall.by_octave[band] +
           hall.ceiling_m2 * a.ceiling.by_octave[band] +
           hall.bare_floor_m2 * a.floor.by_octave[band] +
           hall.seated_floor_m2 * seated_absorption(a, band);
}

}  // namespace

double sabine_s(double volume_m3, double absorption_m2, double air_m2, const Air& air) {
    RL_ASSERT(volume_m3 > 0.0 && absorption_m2 >= 0.0 && absorption_m2 + air_m2 > 0.0);
    return seconds_a_metre(air) * volume_m3 / (absorption_m2 + air_m2);
}

double eyring_s(
    double volume_m3, double area_m2, double mean_absorption, double air_m2, const Air& air) {
    RL_ASSERT(volume_m3 > 0.0 && area_m2 > 0.0 && mean_absorption >= 0.0);
    if (mean_absorption >= 1.0) return 0.0;
    const double exponent_m2 = -area_m2 * std::log1p(-mean_absorption);
    RL_ASSERT(exponent_m2 + air_m2 > 0.0);
    return seconds_a_metre(air) * volume_m3 / (exponent_m2 + air_m2);
}

double air_absorption_m2(double volume_m3, double frequency_hz, const Air& air) {
    const double energy_per_m =
        air_absorption_db_per_m(frequency_hz, air) / 10.0 * std::numbers::ln10;
    return 4.0 * energy_per_m * volume_m3;
}

double seated_absorption(const room::Acoustics& acoustics, std::size_t band) {
    const double taken = acoustics.taken_fraction;
    return taken * acoustics.audience.by_octave.at(band) +
           (1.0 - taken) * acoustics.seats.by_octave.at(band);
}

std::array<DecayBand, room::kAbsorptionOctaves_hz.size()> decay_bands(
    const room::HallSurfaces& hall, const room::Acoustics& acoustics, const Air& air) {
    std::array<DecayBand, room::kAbsorptionOctaves_hz.size()> out;
    for (std::size_t i = 0; i < out.size(); ++i) {
        DecayBand& band = out[i];
        band.frequency_hz = room::kAbsorptionOctaves_hz[i];
        band.surfaces_m2 = surfaces_m2(hall, acoustics, i);
        band.mean_absorption = band.surfaces_m2 / hall.total_m2();
        band.air_m2 = air_absorption_m2(hall.volume_m3, band.frequency_hz, air);
        band.sabine_s = sabine_s(hall.volume_m3, band.surfaces_m2, band.air_m2, air);
        band.eyring_s =
            eyring_s(hall.volume_m3, hall.total_m2(), band.mean_absorption, band.air_m2, air);
    }
    return out;
}

double listening_decay_s(double volume_m3) {
    return 0.25 * std::cbrt(volume_m3 / 100.0);
}

std::optional<double> speech_decay_s(double volume_m3) {
    constexpr double kLeastVolume_m3 = 30.0;
    if (volume_m3 < kLeastVolume_m3) return std::nullopt;
    return 0.37 * std::log10(volume_m3) - 0.14;
}

double critical_distance_m(const DecayBand& band) {
    return std::sqrt((band.surfaces_m2 + band.air_m2) / (16.0 * base::kPi));
}

double schroeder_frequency_hz(double decay_s, double volume_m3) {
    return 2000.0 * std::sqrt(decay_s / volume_m3);
}

}  // namespace rakeline::sound
