// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Private to study/: what each subject reads of a layout, as values that compare. The subjects
/// never see the whole layout; an edit outside a slice leaves that subject's result standing.
namespace rakeline::study {

room::SeatPlanInput seat_plan_slice(const room::Layout& layout);
picture::PictureInput picture_slice(const room::Layout& layout, const room::SeatPlan& seats);

/// The light study reads the pictures; those follow from their own inputs, so these are the key.
struct LightSlice {
    light::LightInput input;
    picture::PictureInput pictures;
    bool operator==(const LightSlice&) const = default;
};
LightSlice light_slice(const Study& study);

struct SightSlice {
    room::SeatPlan seats;
    std::vector<room::SeatBlock> blocks;
    room::Audience audience;
    std::vector<room::CrossAisleLine> cross_aisles;
    room::Screen screen;
    std::vector<room::Format> formats;
    bool operator==(const SightSlice&) const = default;
};
SightSlice sight_slice(const Study& study);
sight::SightInput sight_input(const Study& study);

struct SoundSlice {
    room::Screen screen;
    double temperature_c = 20.0;
    double humidity_fraction = 0.5;
    std::vector<room::Loudspeaker> loudspeakers;
    std::vector<glm::dvec3> ears;
    std::optional<int> reference_seat;
    double peak_level_db = 105.0;
    sound::HallInput hall;
    room::Playback playback;
    std::vector<glm::dvec3> seat_floors;
    double standing_height_m = 1.75;
    bool operator==(const SoundSlice&) const = default;
};
SoundSlice sound_slice(const Study& study);
sound::SoundInput sound_input(const Study& study);

/// Beats follow from the pictures and how bright they are.
struct HoleSlice {
    room::Screen screen;
    picture::PictureInput pictures;
    std::vector<double> luminance_cdm2;  ///< per picture; 0 where it is unknown
    std::vector<glm::dvec3> eyes;
    bool operator==(const HoleSlice&) const = default;
};
HoleSlice hole_slice(const Study& study);
sound::HoleInput hole_input(const Study& study);

}  // namespace rakeline::study
