// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <array>
#include <vector>

/// Lines of equal value over seats, in plan: triangles between neighbouring seats, the value linear
/// on each, and the line where it passes a level.
namespace rakeline::drawing {

struct SeatMesh {
    std::vector<glm::dvec2> points;  ///< (across, back), one a seat that has a value
    std::vector<double> values;      ///< SI, parallel to `points`
    std::vector<std::array<int, 3>> triangles;
};

/// Seats farther apart than this are not joined: an aisle or a cross aisle of common width is
/// bridged, a void or another block is not. Ours.
inline constexpr double kMostBridged_m = 2.5;

/// The seats of one block, each row joined to the next: between two rows the shorter diagonal, and
/// of two alike the one that makes left and right mirror images. Nothing is joined past a row's
/// ends.
SeatMesh seat_mesh(const study::Study& study, const study::Figure& figure, int block);

/// Where the mesh passes `level`, as lines that are as long as they can be; a closed one ends where
/// it began. A value of just the level counts as above it.
std::vector<std::vector<glm::dvec2>> contours(const SeatMesh& mesh, double level);

/// Round numbers (1, 2 or 5 times a power of ten apart) strictly between two values: eight at most,
/// and as many as that allows.
std::vector<double> round_levels(double least, double most);

}  // namespace rakeline::drawing
