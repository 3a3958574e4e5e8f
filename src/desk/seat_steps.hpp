// SPDX-License-Identifier: MIT
#pragma once

#include "desk/workspace.hpp"

/// From seat to seat by the arrow keys.
namespace rakeline::desk {

/// The seat beside, in front of or behind `seat`, as one who faces the screen has them. In front
/// and behind: the nearest one at most half as far to the side; beside: the nearest whose row goes
/// on there, across an aisle too. Nothing at the edge of the seating.
std::optional<int> seat_beside(const room::SeatPlan& plan, int seat, SeatStep step);

/// Takes the step that the keys asked for: from the selected seat, or, where none is selected, to
/// the reference seat.
void take_seat_step(Workspace& workspace, const study::Study& study);

}  // namespace rakeline::desk
