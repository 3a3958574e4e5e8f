// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/value_contours.hpp"
#include "study/study.hpp"

/// Seats in plan as a mesh for contours: triangles between neighbouring seats.
namespace rakeline::drawing {

/// `points`: (across, back), one a seat that has a value; `values`: SI.
using SeatMesh = ValueMesh;

/// Seats farther apart than this are not joined: an aisle or a cross aisle of common width is
/// bridged, a void or another block is not. Ours.
inline constexpr double kMostBridged_m = 2.5;

/// The seats of one block, each row joined to the next: between two rows the shorter diagonal, and
/// of two alike the one that makes left and right mirror images. Nothing is joined past a row's
/// ends.
SeatMesh seat_mesh(const study::Study& study, const study::Figure& figure, int block);

}  // namespace rakeline::drawing
