// SPDX-License-Identifier: MIT
#pragma once

#include "sound/hole_study.hpp"

/// How the holes' rows would have to be turned against the pixels for the faintest beat.
namespace rakeline::sound {

struct TurnTrial {
    double angle_rad = 0.0;   ///< Perforation::angle_rad
    double visibility = 0.0;  ///< highest over the pictures, as beat_risk has it; 0: no beat
    bool operator==(const TurnTrial&) const = default;
};

struct TurnAdvice {
    double now = 0.0;               ///< visibility as the sheet hangs
    std::vector<TurnTrial> trials;  ///< 0 to the pattern's symmetry, in steps of kTurnStep_rad
    std::size_t best = 0;           ///< lowest visibility; of equals the least turned
};

inline constexpr double kTurnStep_rad = base::kRadPerDeg;

/// Past half of the angle that the pattern repeats in (90 degrees for square and woven, 60 for
/// staggered) a square pixel grid meets the mirror image: 0 to 45, 0 to 30 degrees.
double turn_range_rad(room::PerforationPattern pattern);

/// Nothing without holes, pictures or eyes.
std::optional<TurnAdvice> turn_advice(const HoleInput& in);

/// The highest beat_risk of the pictures with these holes.
double worst_risk(const HoleInput& in, const room::Perforation& holes);

}  // namespace rakeline::sound
