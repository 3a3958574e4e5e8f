// SPDX-License-Identifier: MIT
#pragma once

#include "room/rows.hpp"

#include <vector>

/// Where people stand and pass in the cross aisles of the seating.
namespace rakeline::room {

/// The middle line of one cross aisle. It lies half the aisle's width behind the tread of the row
/// in front of it, on the floor of that row, along that row's arc.
struct CrossAisleLine {
    int row_behind = 0;                ///< index in SeatPlan::rows: the first row behind the aisle
    glm::dvec3 middle{0.0};            ///< floor on the block's centre line
    std::vector<PlaceAlong> standing;  ///< floor under people side by side, from house left
    bool operator==(const CrossAisleLine&) const = default;
};

/// Every cross aisle inside a block, in the order of the blocks and then from the screen. People
/// stand `pitch_m` apart, as many as the longer of the two rows beside the aisle is long for, one
/// at least, centred. The gap between two blocks is no cross aisle of either.
std::vector<CrossAisleLine> cross_aisle_lines(const SeatPlanInput& in, double pitch_m);

}  // namespace rakeline::room
