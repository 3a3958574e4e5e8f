// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"
#include "sight/row_clearance.hpp"
#include "sight/viewing_angles.hpp"

#include <vector>

/// What every seat's eye has of the picture: true angles, and clearance over the rows in front.
namespace rakeline::sight {

struct SightInput {
    geometry::Patch surface;
    std::vector<picture::Opening> openings;  ///< per format
    room::SeatPlan seats;
    std::vector<room::SeatBlock> blocks;  ///< for stagger
};

struct FormatSight {
    std::vector<ViewingAngles> seats;
    std::vector<RowClearance> rows;  ///< along each row's own centre line
    bool operator==(const FormatSight&) const = default;
};

struct SightStudy {
    std::vector<FormatSight> formats;
    bool operator==(const SightStudy&) const = default;
};

SightStudy study_sight(const SightInput& in);

}  // namespace rakeline::sight
