// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"

#include <optional>
#include <span>
#include <string>
#include <vector>

/// The rows of one block as the rake solver sees them: the sight lines that each has to have, and
/// what hangs over it. Everything here follows from the plan alone; floors may then be tried
/// freely.
namespace rakeline::sight {

/// One sight line from a row's eye over an eye ahead to the nearest point of a format's lower edge.
///
///     C = t e + (1 - t) f - a      t = D/(D + T)
///       e  the row's eye, m above datum     a  the eye ahead     f  the point of focus
///       D, T  as in sight::c_value, so 0 < t < 1
///
/// Source: sight::c_value with R = a - f and N = e - a, collected by heights.
struct SightOver {
    std::optional<int> ahead;   ///< row of the same block
    double ahead_eye_m = 0.0;   ///< its eye where it is of another block, which stays as it is
    double share = 0.5;         ///< t
    double focus_up_m = 0.0;    ///< f
    double wanted_share = 1.0;  ///< of the wanted C that this line has to clear
    int format = 0;             ///< index of the opening
};

struct RakeRow {
    std::string letter;
    double spacing_m = 0.0;        ///< to the row in front, eye to eye in plan; 0 of the first row
    double floor_m = 0.0;          ///< as the layout has it
    double ceiling_m = 0.0;        ///< lowest thing over the row that doesn't move with it
    std::optional<double> beam_m;  ///< lower side of the lowest beam over the row
    std::vector<SightOver> over;
};

struct RakeRows {
    double eye_height_m = 1.2;
    std::vector<RakeRow> rows;  ///< from the screen; the first stays where it is
};

/// Which eyes ahead have to be cleared. Every row: the row in front. Every second row, for
/// staggered seats: the row two ahead, past whose heads people look between those of the next; the
/// block's second row, which has none two ahead in its block, clears half of C over the first.
/// Source of the half: US practice of 1945, 4 in a row and 8 in over the row two ahead
/// (Theatre Catalog 1945).
enum class RakeOver { row_in_front, second_row };

/// The rows of block `block`, against every opening; a row looks over what the plan links it to.
/// Ceilings are `ceiling_m`, beams unset: callers lower them. Nothing where a row does not stand
/// behind what it should look over on the way to the picture.
std::optional<RakeRows> rake_rows(const geometry::Patch& surface,
                                  std::span<const picture::Opening> openings,
                                  const room::SeatPlan& plan,
                                  int block,
                                  RakeOver over,
                                  double ceiling_m);

/// What one row clears on its worst line: the one with the least C over what it should be.
struct RowSight {
    double c_m = 0.0;
    double wanted_share = 1.0;  ///< of the wanted C, for this line
    int format = 0;
};

/// Floors `floor_m`, one a row; nothing for a row that looks over none.
std::vector<std::optional<RowSight>> row_sights(const RakeRows& rows,
                                                std::span<const double> floor_m,
                                                double wanted_c_m);

/// C on one line, with these eyes.
double c_over(const SightOver& over, double eye_m, double eye_ahead_m);

/// Height of the eye ahead, for floors `floor_m`.
double eye_ahead(const RakeRows& rows, const SightOver& over, std::span<const double> floor_m);

}  // namespace rakeline::sight
