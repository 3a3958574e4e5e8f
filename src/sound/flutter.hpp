// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "sound/air.hpp"
#include "sound/hall_walls.hpp"

#include <optional>

/// Flutter: a clap that runs to and fro between two facing parallel walls that both send it back,
/// heard as a row of echoes.
namespace rakeline::sound {

/// Walls that open to each other by less than this count as parallel. Common practice, no source.
inline constexpr double kParallelWithin_rad = base::radians(5.0);

/// One pair of facing walls.
struct Flutter {
    double apart_m = 0.0;
    double every_s = 0.0;        ///< 2 apart / c: time to and fro
    double first_return = 0.0;   ///< share of the energy that one of the two sends back
    double second_return = 0.0;  ///< the other
    double frequency_hz = 0.0;   ///< octave band in which most is left
    double kept_db = 0.0;        ///< 10 lg of the product: what one way to and fro leaves
    bool operator==(const Flutter&) const = default;
};

/// Nothing where the pair does not face in parallel: side walls that splay, a hall without level
/// floor between its seats. The octave bands from 500 Hz to 4 kHz; the sides are taken half-way
/// down the hall; the floor is the bare one.
struct FlutterPairs {
    std::optional<Flutter> sides;
    std::optional<Flutter> length;  ///< screen wall and rear wall
    std::optional<Flutter> height;  ///< ceiling and level floor
    bool operator==(const FlutterPairs&) const = default;
};
FlutterPairs flutter_pairs(const HallInput& hall, const Air& air);

}  // namespace rakeline::sound
