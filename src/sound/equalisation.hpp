// SPDX-License-Identifier: MIT
#pragma once

#include "room/acoustics.hpp"
#include "sound/bands.hpp"

#include <optional>

/// What undoes the screen for one loudspeaker behind it, and the power that this costs.
namespace rakeline::sound {

/// Level that the house curve asks for at a third octave, dB relative to the middle: 0 for flat.
/// The nominal curve of large rooms: level to 2 kHz, then -1 dB a third octave to 10 kHz and -2 dB
/// beyond, -1 dB at 50 Hz and -2 dB at 40 Hz, held below. Source: ISO 2969 and SMPTE ST 202 as
/// reported; low end from memory. It is a curve of steady noise in the room, a part of whose fall
/// the room itself brings about.
double house_curve_db(room::HouseCurve curve, std::size_t third);

/// Boost of the signal by third octaves, dB relative to 1 kHz; negative is a cut.
struct Equalisation {
    /// Nothing below 40 Hz, where a screen channel ends, and above Playback::equalise_to_hz.
    std::array<std::optional<double>, kThirds.size()> boost_db;
    /// How much louder the amplifier has to be able to play than 1 kHz alone asks: the greatest
    /// boost from 1 kHz up, dB, >= 0. As power, a factor 10^(headroom/10).
    double headroom_db = 0.0;
    bool operator==(const Equalisation&) const = default;
};

/// boost = N - N(1 kHz) + H, N = loss of the sheet less what its gap adds, H = house_curve_db.
///
/// Where the house curve asks for less treble than 1 kHz, that much less has to be made good. The
/// loudspeaker's own response, the air and the room are not in it: what a meter in the room says
/// goes first. Source: derived.
Equalisation equalisation(const Thirds& loss_db,
                          const Thirds& gap_level_db,
                          const room::Playback& playback);

}  // namespace rakeline::sound
