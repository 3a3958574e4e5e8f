// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"
#include "sight/hidden_cache.hpp"
#include "sight/row_clearance.hpp"
#include "sight/row_ends.hpp"
#include "sight/standing.hpp"
#include "sight/viewing_angles.hpp"
#include "sight/wheelchair.hpp"

#include <vector>

/// What every seat's eye has of the picture: true angles, clearance over the rows in front, and how
/// much a full house hides.
namespace rakeline::sight {

struct SightInput {
    geometry::Patch surface;
    std::vector<picture::Opening> openings;  ///< per format
    room::SeatPlan seats;
    std::vector<room::SeatBlock> blocks;             ///< for stagger and seat backs
    room::Audience audience;                         ///< whose heads stand in front
    std::vector<room::CrossAisleLine> cross_aisles;  ///< with people at standing_pitch()
};

struct FormatSight {
    std::vector<ViewingAngles> seats;
    std::vector<RowClearance> rows;                      ///< along each row's own centre line
    std::vector<RowEnds> ends;                           ///< per row, from its two end seats
    std::vector<std::optional<OverStanding>> standing;   ///< per row behind a cross aisle
    std::vector<std::optional<double>> hidden_standing;  ///< per seat behind a cross aisle
    std::vector<WheelchairSight> wheelchairs;            ///< one a wheelchair place
    std::vector<SeatHidden> hidden;  ///< per seat, in a full house of the audience's one head
    bool operator==(const FormatSight&) const = default;
};

struct SightStudy {
    std::vector<FormatSight> formats;
    bool operator==(const SightStudy&) const = default;
};

SightStudy study_sight(const SightInput& in);

/// The same over one edit after the other, bit for bit: each format keeps its hidden picture and
/// works out again what an edit can touch.
class SightCache {
public:
    SightStudy update(const SightInput& in);

private:
    std::vector<HiddenCache> hidden_;  ///< per format
};

/// What hides the picture of one format from one seat, the largest share first; indices as in
/// full_house(), whose heads are those of the seats.
std::vector<HidingShare> seat_hiding_shares(const SightInput& in, int format, int seat);

}  // namespace rakeline::sight
