// SPDX-License-Identifier: MIT
#pragma once

#include "base/assert.hpp"

#include <algorithm>
#include <array>
#include <cstddef>

/// The bands in which sound is computed and shown.
namespace rakeline::sound {

/// Octave bands by their nominal frequencies (ISO 266), 63 Hz to 16 kHz; a band is computed as a
/// tone at that frequency.
inline constexpr std::array<double, 9> kOctaves = {63,   125,  250,  500,  1000,
                                                   2000, 4000, 8000, 16000};

/// Third-octave nominal frequencies (ISO 266), 20 Hz to 20 kHz, at which the sheet is shown.
inline constexpr std::array<double, 31> kThirds = {
    20,  25,   31.5, 40,   50,   63,   80,   100,  125,  160,  200,  250,   315,   400,   500,  630,
    800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000, 10000, 12500, 16000, 20000};

/// One value a third octave.
using Thirds = std::array<double, kThirds.size()>;

/// Index in kThirds of a band that is there.
constexpr std::size_t third_at(double frequency_hz) {
    const auto* found = std::find(kThirds.begin(), kThirds.end(), frequency_hz);
    RL_ASSERT(found != kThirds.end());
    return static_cast<std::size_t>(found - kThirds.begin());
}

}  // namespace rakeline::sound
