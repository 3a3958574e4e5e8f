// SPDX-License-Identifier: MIT
#pragma once

#include <array>

/// What the room does to sound and how loud it is meant to play, parts of the document
/// (layout.hpp). SI inside.
namespace rakeline::room {

/// Middles of the octave bands that absorption is given in.
inline constexpr std::array<double, 6> kAbsorptionOctaves_hz{125.0,  250.0,  500.0,
                                                             1000.0, 2000.0, 4000.0};

/// Share of the sound energy falling on a surface that does not come back, by random incidence, in
/// the bands of kAbsorptionOctaves_hz. Seats and audience may pass 1: their edges take in sound
/// that is counted on their floor alone.
struct OctaveAbsorption {
    std::array<double, 6> by_octave{};
    bool operator==(const OctaveAbsorption&) const = default;
};

/// Surfaces of the hall as sound meets them. The defaults are round values of handbook tables for a
/// dry cinema, from memory: common practice, no source. Measured ones of the materials chosen
/// replace them.
struct Acoustics {
    /// What stands behind and round the screen: 50 mm of mineral fibre.
    OctaveAbsorption screen_wall{{0.20, 0.60, 0.90, 0.95, 0.95, 0.90}};
    /// Mineral-fibre panels of 50 mm under cloth.
    OctaveAbsorption side_walls{{0.22, 0.60, 0.90, 0.90, 0.88, 0.85}};
    /// Mineral fibre of 100 mm under cloth.
    OctaveAbsorption rear_wall{{0.50, 0.85, 0.95, 0.95, 0.92, 0.90}};
    /// Hung tiles of mineral fibre.
    OctaveAbsorption ceiling{{0.45, 0.55, 0.65, 0.75, 0.80, 0.75}};
    /// Heavy carpet on concrete, where no seats stand.
    OctaveAbsorption floor{{0.02, 0.06, 0.14, 0.37, 0.60, 0.65}};
    /// Heavily upholstered seats, empty, per area of the floor that they cover.
    OctaveAbsorption seats{{0.49, 0.66, 0.80, 0.88, 0.82, 0.70}};
    /// The same seats taken, per area of the floor that they cover.
    OctaveAbsorption audience{{0.60, 0.74, 0.88, 0.96, 0.93, 0.85}};
    /// Facing of the wall or cabinet fronts behind the screen, which the gap behind the sheet
    /// meets: 25 mm of mineral fibre.
    OctaveAbsorption baffle{{0.06, 0.20, 0.65, 0.90, 0.95, 0.95}};
    double taken_fraction = 0.67;  ///< share of the seats taken, for the decay time
    int noise_target_nc = 25;      ///< noise criterion curve that the background is to keep under
    bool operator==(const Acoustics&) const = default;
};

/// What the sound system is equalised to at the seats.
enum class HouseCurve {
    flat,
    x_curve,  ///< nominal curve of large rooms: ISO 2969 and SMPTE ST 202, from memory
};

/// How loud the channels are meant to play, and how they are set. The screen channels' own level
/// is Layout::peak_level_db.
struct Playback {
    double surround_peak_level_db = 102.0;  ///< of one surround channel, all its loudspeakers
    double sub_bass_gain_db = 10.0;         ///< in its band, above a screen channel
    double crest_factor_db = 12.0;          ///< the programme's peaks above its long-term level
    double equalise_to_hz = 10000.0;        ///< up to which the screen's loss is made good
    HouseCurve house_curve = HouseCurve::x_curve;
    bool operator==(const Playback&) const = default;
};

}  // namespace rakeline::room
