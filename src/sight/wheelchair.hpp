// SPDX-License-Identifier: MIT
#pragma once

#include "sight/blockers.hpp"
#include "sight/over_row.hpp"

/// What people in wheelchair places see over the whole range of their eye heights, and what the
/// tallest of them hide from those behind.
namespace rakeline::sight {

/// One wheelchair place in one format. "Low" and "high" are the ends of the range of eye heights
/// that the audience states for wheelchair places (ADA fig. A3: 1.09 to 1.295 m over the floor).
struct WheelchairSight {
    int seat = 0;                ///< index in the plan
    std::optional<OverRow> low;  ///< over the row in front; nothing in a first row
    std::optional<OverRow> high;
    double hidden_low_fraction = 0.0;  ///< of the picture's area, in a full house
    double hidden_high_fraction = 0.0;
    /// Of the seats behind that were tried, the one that loses most by the tall person here.
    std::optional<int> behind;
    double hides_fraction = 0.0;  ///< of the picture, from that seat, which no one else hides
    bool operator==(const WheelchairSight&) const = default;
};

/// Seats of the row behind that are tried for each place: the nearest in plan, and any as near as
/// the last of them.
inline constexpr int kSeatsTriedBehind = 5;

/// All wheelchair places of the plan, in its order. `people` are full_house() of the same plan.
std::vector<WheelchairSight> wheelchair_sights(const geometry::Patch& surface,
                                               const picture::Opening& opening,
                                               const room::SeatPlan& plan,
                                               const std::vector<room::SeatBlock>& blocks,
                                               const Blockers& people,
                                               const room::Audience& audience);

}  // namespace rakeline::sight
