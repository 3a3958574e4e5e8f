// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "room/layout.hpp"
#include "sound/air_absorption.hpp"
#include "sound/arrival.hpp"
#include "sound/bands.hpp"
#include "sound/cabinets.hpp"
#include "sound/coverage_study.hpp"
#include "sound/direct_path.hpp"
#include "sound/directivity.hpp"
#include "sound/hall_sound.hpp"
#include "sound/perforation.hpp"
#include "sound/sheet_study.hpp"

#include <array>
#include <optional>
#include <vector>

/// Direct sound from every loudspeaker at every seat, through the screen where it stands behind it.
namespace rakeline::sound {

struct SoundInput {
    geometry::Patch surface;
    Sheet sheet;
    Air air;
    std::vector<room::Loudspeaker> loudspeakers;
    std::vector<glm::dvec3> ears;       ///< per seat, at eye height
    std::optional<int> reference_seat;  ///< index in ears
    double peak_level_db = 105.0;
    room::Acoustics acoustics;
    room::Playback playback;
    std::optional<HallInput> hall;        ///< unset: direct sound alone is asked for
    double screen_height_m = 4.2;         ///< of the frame, along the surface
    std::vector<glm::dvec3> seat_floors;  ///< per seat; empty: heights over heads are not asked for
    double standing_height_m = 1.75;      ///< of a person at a seat, to the crown
};

/// The terms of a level, all in dB, so that the derivation can show the sum.
///
///     level = sensitivity + 10 lg(P / 1 W) - 20 lg(r / 1 m) + directivity - screen - air
///       P  electrical power, r  distance; screen at the path's own angle; air over the whole path
///
/// Source: inverse square law of the free field (common practice, no source). Nearer than
/// kNearestPath_m the law says nothing, and the distance term keeps its value there.
/// Example: 110 dB for 1 W at 1 m, 126.5 W, 20 m, nothing else -> 105.0 dB.
struct LevelTerms {
    double sensitivity_db = 0.0;
    double power_db = 0.0;
    double distance_db = 0.0;
    double directivity_db = 0.0;
    double screen_db = 0.0;
    double air_db = 0.0;

    double sum_db() const {
        return sensitivity_db + power_db + distance_db + directivity_db + screen_db + air_db;
    }
};
inline constexpr double kNearestPath_m = 0.1;

LevelTerms level_terms(const room::Loudspeaker& loudspeaker,
                       const DirectPath& path,
                       const Sheet& sheet,
                       const Air& air,
                       double frequency_hz);

struct LoudspeakerSound {
    std::vector<DirectPath> paths;  ///< per seat
    /// level_db[band][seat]: direct sound at rated power, dB re 20 uPa.
    std::array<std::vector<double>, kOctaves.size()> level_db;
    Octaves spread_db{};  ///< highest minus lowest seat
    bool operator==(const LoudspeakerSound&) const = default;
};

struct SoundStudy {
    Thirds screen_loss_db{};  ///< normal incidence
    SheetStudy sheet;
    std::vector<LoudspeakerSound> loudspeakers;
    Arrival arrival;
    std::optional<HallSound> hall;  ///< nothing where no hall is given
    CoverageStudy coverage;
    std::vector<CabinetRoom> cabinets;          ///< per loudspeaker
    std::optional<double> hole_visible_from_m;  ///< nothing without holes
    bool operator==(const SoundStudy&) const = default;
};

SoundStudy study_sound(const SoundInput& in);

/// Its part that costs most: per loudspeaker, the same bit for bit on any number of threads (0: as
/// many as the machine has).
std::vector<LoudspeakerSound> direct_levels(const SoundInput& in, unsigned threads = 0);

}  // namespace rakeline::sound
