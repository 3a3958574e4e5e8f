// SPDX-License-Identifier: MIT
#pragma once

#include "sound/picture_beat.hpp"

/// What is seen of the holes that let the sound through.
namespace rakeline::sound {

struct HoleInput {
    geometry::Patch surface;
    double width_m = 0.0;   ///< of the sheet, chord
    double height_m = 0.0;  ///< along the surface
    room::Perforation perforation;
    std::vector<glm::dvec3> eyes;        ///< per seat
    std::vector<PixelPicture> pictures;  ///< of digital machines; film has no pixels
};

/// Distance within which rows of holes `pitch_m` apart are told from each other, two minutes of arc
/// for one dark and one bright: b / tan 2'. Source: one minute for each (acuity 1.0), common
/// practice, no source. Example: 5 mm -> 8.59 m.
double pitch_visible_from_m(double pitch_m);

struct HoleStudy {
    std::optional<double> pitch_visible_from_m;  ///< nothing without holes, like what follows
    std::vector<double> sheet_distance_m;        ///< per seat, to the sheet's nearest point
    std::optional<int> nearest_seat;
    std::optional<double> seats_that_see_holes;  ///< share nearer than hole_visible_from_m
    std::vector<PictureBeat> beats;              ///< of the pictures that have any, in their order
    bool operator==(const HoleStudy&) const = default;
};

HoleStudy study_holes(const HoleInput& in);

/// Of a projector and format, or null.
const PictureBeat* find_beat(const HoleStudy& study, int projector, int format);

}  // namespace rakeline::sound
