// SPDX-License-Identifier: MIT
#pragma once

#include "sound/sound_study.hpp"

/// Where a loudspeaker behind the screen should point for the seats to differ least.
namespace rakeline::sound {

/// Octaves whose spread is brought down, indices in kOctaves: 2, 4 and 8 kHz, where a horn directs.
inline constexpr std::array<std::size_t, 3> kAimBands = {5, 6, 7};

/// A place and direction, the numbers that the search moves.
struct Aim {
    double yaw_rad = 0.0;
    double pitch_rad = 0.0;
    double up_m = 0.0;
    bool operator==(const Aim&) const = default;
};

struct AimProposal {
    Aim before;
    Aim after;
    /// Mean over kAimBands of the loudest seat less the quietest, dB.
    double spread_before_db = 0.0;
    double spread_after_db = 0.0;
};

/// Mean spread over kAimBands of one loudspeaker, aimed so, dB. Needs seats.
double aim_spread_db(const SoundInput& in, std::size_t loudspeaker, const Aim& aim);

/// The aim with the least mean spread: a grid of directions toward the seats, then steps along one
/// number at a time that halve where none helps, down to 0.1 degrees and 10 mm. The axis stays
/// among the seats, or up to 5 degrees above them. The spread has kinks where another seat becomes
/// the loudest, so no slope is followed. `move_height` lets the height change too, as far as the
/// cabinet stays within the picture's height; else only yaw and pitch do. Never worse than before;
/// deterministic. Nothing without seats, or for a loudspeaker that is no screen channel. Least at
/// which spread is a matter of direct sound alone.
std::optional<AimProposal> best_aim(const SoundInput& in,
                                    std::size_t loudspeaker,
                                    bool move_height);

}  // namespace rakeline::sound
