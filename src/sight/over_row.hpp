// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"

#include <optional>
#include <vector>

/// The sight line of one eye over a row in front, where it really crosses that row.
namespace rakeline::sight {

/// An eye's own sight line over a row.
struct OverRow {
    glm::dvec3 rear{0.0};   ///< the eye that looks
    glm::dvec3 front{0.0};  ///< the front row's eye line where the sight line crosses it in plan
    glm::dvec3 focus{0.0};  ///< nearest point of the picture's lower edge to the rear eye
    double c_m = 0.0;       ///< clearance (row_clearance.hpp) of these three
    bool operator==(const OverRow&) const = default;
};

/// The clearance of the eye at `rear` over row `front_row` of the plan.
///
/// The row's eye line runs from eye to eye, straight across its aisles, and ends half a seat pitch
/// beyond its outermost eyes, at their height: so far their seats reach. The sight line goes in
/// plan from the rear eye to nearest_focus(); where it crosses the eye line, the front eye's height
/// is interpolated between the two eyes beside it. Of several crossings (an arc) the nearest to the
/// rear eye counts. Nothing where it passes the row outside its seats: no one sits before that eye.
/// Source: derived; C as in sight::c_value.
std::optional<OverRow> over_row(const geometry::Patch& surface,
                                const picture::Opening& opening,
                                const room::SeatPlan& plan,
                                const std::vector<room::SeatBlock>& blocks,
                                const glm::dvec3& rear,
                                int front_row);

}  // namespace rakeline::sight
