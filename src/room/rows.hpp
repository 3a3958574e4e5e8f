// SPDX-License-Identifier: MIT
#pragma once

#include "room/seat_plan.hpp"

#include <vector>

/// The rows of a block before they are seats: where each crosses the block's centre line, on what
/// it stands, and where along it the seats are. Steps between place_seats and the file's blocks.
namespace rakeline::room {

struct RowLine {
    double back_m = 0.0;    ///< reference line on the block's centre line, room frame
    double up_m = 0.0;      ///< floor there
    double radius_m = 0.0;  ///< of its arc about a point toward the screen; 0: straight
    int seats = 0;
    bool operator==(const RowLine&) const = default;
};

/// Rows from the screen. A block whose rows shrink to nothing ends with its last row that has a
/// seat. An equal-clearance row that does not lie behind the picture's lower edge stands level with
/// the row in front of it (check_layout refuses such rooms).
std::vector<RowLine> row_lines(const SeatPlanInput& in, const SeatBlock& block);

/// Floor under a seat of the row at `back_m`: a row of steps is level along its arc; a sloped floor
/// and a profile are surfaces of their own, which an arc crosses at several heights.
double floor_under(const SeatPlanInput& in,
                   const SeatBlock& block,
                   const RowLine& row,
                   double back_m);

/// Whether the hall's profile, not the block, says where its rows stand.
bool stands_on_profile(const SeatPlanInput& in, const SeatBlock& block);

/// Seat centres along row `row` (0 the first), m from the block's centre line, rising.
///
/// Seats and aisles together are centred. An aisle keeps its place from the row's middle as rows
/// grow: after_seat moves by half the seats added, away from the middle where that is half a seat;
/// one that reaches a row's end is no gap in that row. A staggered block moves every second row
/// half a pitch to the right, but not where an odd seats_added_per_row has staggered it already.
std::vector<double> seat_offsets(const SeatBlock& block, int row, int seats);

/// Where one stands on a row, and which way one faces there: toward the middle of its arc.
struct PlaceAlong {
    glm::dvec3 floor{0.0};              ///< height 0 where only the plan is known
    glm::dvec3 facing{0.0, 0.0, -1.0};  ///< unit, level
    bool operator==(const PlaceAlong&) const = default;
};

/// The place `along_m` to the right of the block's centre line, measured along the row.
PlaceAlong place_along(const SeatBlock& block, const RowLine& row, double along_m);

/// Clear width of the cross aisles behind row `row` (0 the first), m; 0 without one.
double cross_aisle_behind(const SeatBlock& block, int row);

/// Point toward which a block with arcs faces, on its centre line: back_m.
double arc_centre_back(const SeatBlock& block);

}  // namespace rakeline::room
