// SPDX-License-Identifier: MIT
#pragma once

#include "sound/equalisation.hpp"
#include "sound/gap.hpp"
#include "sound/loss_band.hpp"

#include <optional>
#include <vector>

/// The sheet by third octaves, and what it does to each screen channel behind it.
namespace rakeline::sound {

struct SoundInput;

/// The ripple of the gap is judged, and its first dip kept out of, this band.
inline constexpr double kRippleFrom_hz = 200.0;
inline constexpr double kRippleTo_hz = 10000.0;

/// One loudspeaker of a screen channel that stands behind the sheet.
struct ChannelSheet {
    Gap gap;
    double spacing_hz = 0.0;   ///< from peak to peak
    double dip_hz = 0.0;       ///< the first
    Thirds gap_level_db{};     ///< over the third octave (gap_band_level_db)
    Thirds gap_ripple_db{};    ///< peak over dip near it, were the gap deep enough for both
    double ripple_db = 0.0;    ///< the greatest of these from kRippleFrom_hz to kRippleTo_hz
    double dip_above_m = 0.0;  ///< up to this distance the first dip lies above kRippleTo_hz
    double dip_below_m = 0.0;  ///< from this distance on it lies below kRippleFrom_hz
    /// Of the way to the reference seat at the sheet; of the axis where there is no such seat.
    double incidence_rad = 0.0;
    Thirds loss_db{};  ///< at that angle
    Equalisation equalisation;
    bool operator==(const ChannelSheet&) const = default;
};

struct SheetStudy {
    double loss_10k_db = 0.0;   ///< at 10 kHz, normal incidence
    double treble_6k_db = 0.0;  ///< loss at 6 kHz over that at 500 Hz
    double treble_8k_db = 0.0;  ///< loss at 8 kHz over that at 500 Hz
    Thirds loss_60_db{};        ///< at 60 degrees from the normal
    /// Of the published conventions, at normal incidence; nothing without holes or where the loss
    /// is measured.
    std::optional<std::array<LossBand, kThirds.size()>> band;
    std::optional<Thirds> apart_db;  ///< holes that do not interact
    /// Per loudspeaker; nothing for those that are no screen channel, do not stand behind the sheet
    /// or whose axis does not meet it.
    std::vector<std::optional<ChannelSheet>> channels;
    bool operator==(const SheetStudy&) const = default;
};

SheetStudy study_sheet(const SoundInput& in);

/// Loss at `angle_rad` from the normal by third octaves, each as a tone at its nominal frequency.
Thirds loss_by_thirds(const Sheet& sheet, double angle_rad, const Air& air);

}  // namespace rakeline::sound
