// SPDX-License-Identifier: MIT
#pragma once

#include "room/rows.hpp"
#include "room/seat_plan.hpp"

#include <vector>

/// The floor that people can stand on, as quadrilaterals.
namespace rakeline::room {

/// A row's tread begins this part of the row spacing ahead of its reference line (the eyes), where
/// the step stands, and ends where the next row's begins. With the usual spacing of 1.1 m that is
/// 0.77 m. Source: common practice, no source; it agrees with the 30 in (0.762 m) from tier edge to
/// eye of a US consent order of 1995, as reported.
inline constexpr double kTreadAheadFraction = 0.7;

/// Depth of a solid balcony front, m. Source: common practice, no source.
inline constexpr double kFrontWallDepth_m = 0.15;

/// A raised block's floor reaches this far beyond its outermost seats, or to the side walls, m.
/// Source: common practice, no source (one aisle's width).
inline constexpr double kRaisedSideAisle_m = 1.2;

/// Arcs are drawn as chords that stand off the arc by no more than this, m.
inline constexpr double kChordError_m = 0.02;

/// Platforms of the whole hall; `rows[b]` are the row_lines of block b.
///
/// By seating: each floor block has its treads and cross aisles from side wall to side wall (blocks
/// side by side meet half-way between their seats), a level floor in front of its first tread to
/// the screen wall or to the block in front, and behind the rearmost block to the booth wall. A
/// cross aisle lies level with the row in front of it. An arc of less radius than the hall is wide
/// ends abreast of its centre and leaves the corners beyond it without floor. By profile: the
/// profile's segments, cut where the seating begins and ends. Raised blocks carry their own treads
/// over that floor, no wider than their seats and a side aisle.
std::vector<Platform> platforms(const SeatPlanInput& in,
                                const std::vector<std::vector<RowLine>>& rows);

}  // namespace rakeline::room
