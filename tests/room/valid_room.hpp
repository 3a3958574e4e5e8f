// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

/// A small invented room in which check_layout finds nothing; tests break it one rule at a time.
namespace rakeline::tests {

inline room::Layout valid_room() {
    using namespace room;
    Layout layout;
    layout.name = "Invented room";
    layout.formats = {{"1.85", 1.85, std::nullopt}, {"2.39", 2.39, std::nullopt}};
    layout.lenses.resize(2);
    layout.lenses[0].name = "prime 40";
    layout.lenses[0].focal_length_m = layout.lenses[0].focal_length_long_m = 0.04;
    layout.lenses[1].name = "zoom 35-55";
    layout.lenses[1].kind = LensKind::zoom;
    layout.lenses[1].focal_length_m = 0.035;
    layout.lenses[1].focal_length_long_m = 0.055;
    layout.projectors.resize(2);
    layout.projectors[0].name = "digital";
    layout.projectors[0].formats.resize(2);
    layout.projectors[0].formats[0].format = "1.85";
    layout.projectors[0].formats[0].lens = "zoom 35-55";
    layout.projectors[0].formats[0].focal_length_m = 0.045;
    layout.projectors[0].formats[1].format = "2.39";
    layout.projectors[1].name = "film";
    layout.projectors[1].kind = SourceKind::film;
    layout.projectors[1].formats.resize(1);
    layout.projectors[1].formats[0].format = "2.39";
    layout.projectors[1].formats[0].squeeze = 2.0;
    layout.projectors[1].formats[0].lens = "prime 40";
    layout.seating.resize(2);
    layout.seating[0].name = "front";
    layout.seating[0].rows = 5;
    layout.seating[0].aisles = {{6, 1.2}};
    layout.seating[0].cross_aisles = {{3, 1.2}};
    layout.seating[0].wheelchair_places = {{"E", 1}, {"E", 12}};
    layout.seating[1].name = "back";
    layout.seating[1].first_row = "F";
    layout.seating[1].rows = 4;
    layout.seating[1].first_row_back_m = 12.5;
    layout.seating[1].first_row_up_m = 0.75;
    layout.audience.reference_seat = "E7";
    layout.loudspeakers.resize(2);
    layout.loudspeakers[0].name = "centre";
    layout.loudspeakers[1].name = "left wall";
    layout.loudspeakers[1].channel = Channel::surround;
    layout.loudspeakers[1].across_m = -5.8;
    layout.loudspeakers[1].up_m = 3.5;
    layout.loudspeakers[1].back_m = 9.0;
    layout.loudspeakers[1].behind_screen = false;
    return layout;
}

}  // namespace rakeline::tests
