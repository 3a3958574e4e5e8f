// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "room/layout.hpp"
#include "sound/air_absorption.hpp"
#include "sound/perforation.hpp"

#include <array>
#include <optional>
#include <vector>

/// Direct sound from every loudspeaker at every seat, through the screen where it stands behind it.
namespace rakeline::sound {

/// Octave bands by their exact mid-frequencies (ISO 266 nominal names), 63 Hz to 16 kHz.
inline constexpr std::array<double, 9> kOctaves = {63,   125,  250,  500,  1000,
                                                   2000, 4000, 8000, 16000};
/// Third-octave nominal frequencies at which the screen loss is shown.
inline constexpr std::array<double, 25> kThirds = {
    63,   80,   100,  125,  160,  200,  250,  315,  400,  500,   630,   800,  1000,
    1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000};

struct SoundInput {
    geometry::Patch surface;
    Sheet sheet;
    Air air;
    std::vector<room::Loudspeaker> loudspeakers;
    std::vector<glm::dvec3> ears;  ///< per seat, at eye height
    std::optional<int> reference_seat;
    double nearest_eye_to_screen_m = 0.0;  ///< unused by levels; for hole visibility
    double peak_level_db = 105.0;
};

/// Level relative to the axis, dB <= 0, `across` and `up` the angles off the axis in its own two
/// planes, rad.
double directivity_db(const room::Loudspeaker& loudspeaker,
                      double frequency_hz,
                      double across_rad,
                      double up_rad,
                      const Air& air);

/// What one path takes, so that the derivation can show it.
struct DirectPath {
    double distance_m = 0.0;
    double off_axis_across_rad = 0.0;
    double off_axis_up_rad = 0.0;
    double sheet_angle_rad = 0.0;  ///< at the screen; 0 where it does not pass
};
DirectPath direct_path(const room::Loudspeaker& loudspeaker,
                       const geometry::Patch& surface,
                       const glm::dvec3& ear);

struct LoudspeakerSound {
    std::vector<DirectPath> paths;  ///< per seat
    /// level_db[band][seat]: direct sound at rated power, dB re 20 uPa.
    std::array<std::vector<double>, kOctaves.size()> level_db;
    std::array<std::optional<double>, kOctaves.size()> spread_db;  ///< highest minus lowest seat
    std::optional<double> amplifier_power_w;  ///< for the peak at the reference seat, at 1 kHz
                                              ///< (63 Hz for sub-bass)
};

struct SoundStudy {
    std::array<double, kThirds.size()> screen_loss_db{};  ///< normal incidence
    std::vector<LoudspeakerSound> loudspeakers;
    std::vector<std::optional<double>> arrival_spread_s;  ///< per seat, over the screen channels
    std::optional<double> hole_visible_from_m;            ///< nothing without holes
};

SoundStudy study_sound(const SoundInput& in);

/// Distance within which a hole of this diameter is larger than one minute of arc: d / tan(1').
double hole_visible_from_m(double diameter_m);

}  // namespace rakeline::sound
