// SPDX-License-Identifier: MIT
#pragma once

#include "sight/over_row.hpp"

/// C-values of the two seats at the ends of every row. A row's centre line (row_clearance.hpp) says
/// what a straight room gives; where rows are curved, splayed or of unequal length, or the picture
/// is narrower than they are, the ends have less.
namespace rakeline::sight {

struct RowEnds {
    std::optional<OverRow> left;         ///< house left end seat over the row in front
    std::optional<OverRow> right;        ///< house right
    std::optional<OverRow> second_left;  ///< over the second row in front, staggered blocks only
    std::optional<OverRow> second_right;
    bool operator==(const RowEnds&) const = default;
};

/// For every row of the plan.
std::vector<RowEnds> row_ends(const geometry::Patch& surface,
                              const picture::Opening& opening,
                              const room::SeatPlan& plan,
                              const std::vector<room::SeatBlock>& blocks);

/// Which of two ends sees less: true for the right one. Ends that differ by less than a nanometre
/// are equal, and then it is the left; an end without C-value is not the worse one.
bool right_end_is_worse(const std::optional<OverRow>& left, const std::optional<OverRow>& right);

}  // namespace rakeline::sight
