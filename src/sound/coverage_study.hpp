// SPDX-License-Identifier: MIT
#pragma once

#include "sound/bands.hpp"
#include "sound/direct_path.hpp"

#include <array>
#include <optional>
#include <vector>

/// How evenly the loudspeakers cover the seats, how much they have to be driven, and where their
/// axes go.
namespace rakeline::sound {

struct SoundInput;
struct SoundStudy;

/// One value an octave band.
using Octaves = std::array<std::optional<double>, kOctaves.size()>;

/// Seats count as covered within this much of the reference seat, to either side. Ours.
inline constexpr double kLevelWindow_db = 3.0;

/// What a loudspeaker's channel asks of it at the reference seat.
///
/// All loudspeakers of the sub-bass, and all surrounds, play together: their energies add up, each
/// driven in proportion to its rated power. A screen loudspeaker is asked alone.
///
///     P = rated power * 10^((target + boost - level)/10)        amplifier, for the peak
///     P_long = P / 10^(crest/10)                                heat, over the long term
///       target  screen channels: Layout::peak_level_db; sub-bass: that and the gain of its band;
///               surrounds: Playback::surround_peak_level_db
///       level   at rated power, 1 kHz octave (sub-bass 63 Hz), of all that play together
///       boost   greatest of the equalisation that undoes the sheet, behind which it stands
///       crest   Playback::crest_factor_db
///
/// The boost is counted as if all of the programme lay where it is greatest: the safe side. Sound
/// of several sub-basses adds by pressure where they stand close, up to 3 dB a doubling more than
/// this says; that is left as reserve. Source: derived: level is proportional to 10 lg of power.
struct Drive {
    double target_db = 0.0;
    double level_db = 0.0;
    double boost_db = 0.0;
    double amplifier_power_w = 0.0;
    double thermal_power_w = 0.0;
    /// 10 lg of what its amplifier can give over amplifier_power_w; negative where it falls short.
    double headroom_db = 0.0;
    /// 10 lg of its rated power over thermal_power_w.
    double thermal_margin_db = 0.0;
    bool operator==(const Drive&) const = default;
};

/// Where the axis goes, by the seat nearest to it in angle.
struct AxisAim {
    int seat = 0;
    double off_axis_rad = 0.0;  ///< of that seat
    /// 0 at the nearest seat to the screen wall, 1 at the farthest; 0 where all stand abreast.
    double depth_fraction = 0.0;
    bool operator==(const AxisAim&) const = default;
};

struct LoudspeakerCoverage {
    Octaves reference_db{};      ///< at rated power, at the reference seat
    Octaves within_fraction{};   ///< of the seats, within kLevelWindow_db of it
    std::optional<Drive> drive;  ///< nothing without a reference seat
    std::optional<AxisAim> aim;  ///< nothing without seats
    bool operator==(const LoudspeakerCoverage&) const = default;
};

/// All surrounds at once, each at rated power, energies added.
///
///     L = 10 lg sum 10^(L_i / 10)
///
/// Source: sound of separate sources without fixed phase adds by energy (common practice, no
/// source).
struct SurroundArray {
    std::array<std::vector<double>, kOctaves.size()> level_db;  ///< [band][seat]
    Octaves spread_db{};                                        ///< highest minus lowest seat
    bool operator==(const SurroundArray&) const = default;
};

struct CoverageStudy {
    std::vector<LoudspeakerCoverage> loudspeakers;
    std::optional<SurroundArray> surrounds;  ///< nothing without any
    bool operator==(const CoverageStudy&) const = default;
};

/// Needs the levels and the sheet's part of `study`.
CoverageStudy study_coverage(const SoundInput& in, const SoundStudy& study);

/// Index in kOctaves of the band by which a channel's amplifier is chosen: 1 kHz, sub-bass 63 Hz.
std::size_t power_band(room::Channel channel);

/// Highest minus lowest; nothing of nothing.
std::optional<double> spread_of(const std::vector<double>& levels);

}  // namespace rakeline::sound
