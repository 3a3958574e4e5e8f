// SPDX-License-Identifier: MIT
#pragma once

#include "room/acoustics.hpp"
#include "room/hall_surfaces.hpp"
#include "sound/air.hpp"

#include <array>
#include <optional>

/// How long sound lingers in the hall: decay times from volume, surfaces and air. An estimate of
/// evenly spread sound; a hall whose sound falls mostly on seats and one bare ceiling, or a dry
/// one, is not that, and a measurement on site goes before it.
namespace rakeline::sound {

/// One octave band of the room.
struct DecayBand {
    double frequency_hz = 1000.0;
    double mean_absorption = 0.0;  ///< of all surfaces by area; seats may carry it past 1
    double surfaces_m2 = 0.0;      ///< their absorption area, sum of S a
    double air_m2 = 0.0;           ///< that of the air, 4 m V
    double sabine_s = 0.0;
    double eyring_s = 0.0;
    bool operator==(const DecayBand&) const = default;
};

/// Time in which sound falls by 60 dB, by Sabine.
///
///     T = 24 ln 10 V / (c (A + 4 m V))      [s]
///       V  volume, m3                  A  absorption area of the surfaces, m2
///       c  speed of sound, m/s         m  energy lost in the air, 1/m
///
/// 24 ln 10 / c is 0.161 s/m at 20 degC. Good to about a mean absorption of 0.2; over it long.
/// Source: W. C. Sabine, 1900; ISO 354:2003 has the same constant, from memory.
double sabine_s(double volume_m3, double absorption_m2, double air_m2, const Air& air);

/// The same by Eyring: A becomes -S ln(1 - a).
///
///     T = 24 ln 10 V / (c (-S ln(1 - a) + 4 m V))      [s]
///       S  area of all surfaces, m2    a  mean absorption, A / S
///
/// Never longer than Sabine's; 0 where a reaches 1. Source: C. F. Eyring, 1930, from memory.
double eyring_s(
    double volume_m3, double area_m2, double mean_absorption, double air_m2, const Air& air);

/// 4 m V, m2, with m = alpha / (10 lg e), alpha in dB/m by ISO 9613-1.
double air_absorption_m2(double volume_m3, double frequency_hz, const Air& air);

/// The bands of room::kAbsorptionOctaves_hz. Taken and empty seats share the seated floor by
/// `taken_fraction`. The hall must have volume and area.
std::array<DecayBand, room::kAbsorptionOctaves_hz.size()> decay_bands(
    const room::HallSurfaces& hall, const room::Acoustics& acoustics, const Air& air);

/// Absorption of the seated floor in the band, taken and empty seats together.
double seated_absorption(const room::Acoustics& acoustics, std::size_t band);

/// The mean decay time for a room to listen in closely, taken here as the lower side of what suits
/// a cinema.
///
///     T = 0.25 s (V / 100 m3)^(1/3)
///
/// Source: Recommendation ITU-R BS.1116-3, clause on reverberation time, from memory.
double listening_decay_s(double volume_m3);

/// The decay time for speech to a seated audience, taken here as the upper side. Nothing under
/// 30 m3, where the formula does not hold; over 5000 m3 it is carried on.
///
///     T = 0.37 s lg(V / 1 m3) - 0.14 s
///
/// Source: DIN 18041:2016, group A2 (speech, lecture), from memory.
std::optional<double> speech_decay_s(double volume_m3);

/// Distance at which a source that sends evenly all round is as loud as what the hall gives back.
///
///     r = sqrt((A + 4 m V) / (16 pi))       [m]
///
/// Source: diffuse field of a room, handbook form, from memory.
double critical_distance_m(const DecayBand& band);

/// Above this frequency a room's single resonances run together.
///
///     f = 2000 sqrt(T / V)       [Hz], T in s, V in m3
///
/// Source: M. R. Schroeder, 1962, from memory.
double schroeder_frequency_hz(double decay_s, double volume_m3);

}  // namespace rakeline::sound
