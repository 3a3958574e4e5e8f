// SPDX-License-Identifier: MIT
#pragma once

#include "room/seat_plan.hpp"
#include "sight/hidden.hpp"

#include <vector>

/// Who and what stands in the room before the picture: heads, seats, balconies.
namespace rakeline::sight {

struct Blockers {
    std::vector<Head> heads;  ///< one a seat, in the plan's order
    std::vector<Wall> walls;
    bool operator==(const Blockers&) const = default;
};

/// Width of shoulders and seat back over the seat pitch (common practice, no source).
inline constexpr double kShoulderWidthRatio = 0.9;

/// A full house of the audience's one head. Every seat but a wheelchair place has a wall of
/// kShoulderWidthRatio x seat pitch across its facing, to SeatBlock::seat_back_m over its floor; a
/// balcony's front hides below its upper edges, and a raised block's front edge hides all above it
/// from those beneath.
Blockers full_house(const room::SeatPlan& plan,
                    const std::vector<room::SeatBlock>& blocks,
                    const room::Audience& audience);

}  // namespace rakeline::sight
