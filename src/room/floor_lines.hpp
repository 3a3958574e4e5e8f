// SPDX-License-Identifier: MIT
#pragma once

#include "room/platforms.hpp"

#include <limits>
#include <optional>
#include <vector>

/// Blocks as the floor sees them, and the edges along which it is cut. Inside platforms.cpp's work.
namespace rakeline::room {

/// Sides that a block's floor reaches to, besides those of the hall.
struct Band {
    double left_m = -std::numeric_limits<double>::infinity();
    double right_m = std::numeric_limits<double>::infinity();
};

/// A block that has rows, with its part of the hall's width.
struct FloorBlock {
    const SeatBlock* seats = nullptr;
    const std::vector<RowLine>* rows = nullptr;
    Band band;
    int first_row = 0;  ///< index in SeatPlan::rows
    int index = 0;      ///< in Layout::seating

    double ahead_m() const { return kTreadAheadFraction * seats->row_spacing_m; }
    double front_m() const { return rows->front().back_m - ahead_m(); }
    double end_of(const RowLine& row) const {
        return row.back_m + seats->row_spacing_m - ahead_m();
    }
    double back_m() const { return end_of(rows->back()); }
};

/// The blocks that are raised, or those that are not, in the layout's order; blocks on the floor
/// that stand side by side share it half-way between their outermost seats.
std::vector<FloorBlock> floor_blocks(const SeatPlanInput& in,
                                     const std::vector<std::vector<RowLine>>& rows,
                                     bool raised);

/// How far the widest row, with its seats' own width, reaches from the block's centre line, m.
double half_extent(const FloorBlock& block);

/// The nearest block wholly in front of this one, or null.
const FloorBlock* block_ahead(const std::vector<FloorBlock>& blocks, const FloorBlock& block);

/// Whether no block stands wholly behind this one.
bool is_rearmost(const std::vector<FloorBlock>& blocks, const FloorBlock& block);

using Line = std::vector<glm::dvec3>;  ///< an edge across the floor, from house left

/// What cutting the floor needs everywhere.
struct Floor {
    const SeatPlanInput& in;
    int chords =
        1;  ///< parts of every edge across the hall, so that neighbours meet point by point
};

/// As many chords as keep every block's arcs within kChordError_m, 64 at most.
int chords_for(const SeatPlanInput& in);

/// Edge straight across at `back_m`, height 0.
Line straight_line(const Floor& floor, const Band& band, double back_m);

/// Edge along the block's arcs that crosses its centre line at `back_m` (straight if they are),
/// height 0, kept between screen wall and booth wall.
Line block_line(const Floor& floor, const FloorBlock& block, double back_m);

void set_height(Line& line, double up_m);

/// What a strip between two edges is.
struct StripKind {
    PlatformKind kind = PlatformKind::tread;
    std::optional<int> row;
    std::optional<int> block;
};

/// Quadrilaterals between two edges of equal count; slivers of no depth are left out.
void add_strip(const Line& front, const Line& back, StripKind kind, std::vector<Platform>& out);

}  // namespace rakeline::room
