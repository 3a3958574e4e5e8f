// SPDX-License-Identifier: MIT
#pragma once

#include "room/seat_plan.hpp"

#include <optional>
#include <vector>

/// How many wheelchair places a room should have, and who can sit beside them.
namespace rakeline::room {

/// Wheelchair spaces by the number of seats: one country's table, as an example.
///
///     4 to 25: 1    26 to 50: 2    51 to 150: 4    151 to 300: 5    301 to 500: 6
///     501 to 5000: 6, and 1 for each 150 or part of it over 500
///     over 5000:  36, and 1 for each 200 or part of it over 5000
///
/// Nothing under 4 seats, of which the table does not speak. Local access law goes first.
/// Source: 2010 ADA Standards, table 221.2.1.1, as reported.
std::optional<int> wheelchair_places_wanted(int seats);

/// Seats beside each other, with no aisle between: closer than this many seat pitches (common
/// practice, no source; a wheelchair place keeps the pitch of its row here).
inline constexpr double kBesidePitches = 1.5;

/// The wheelchair places that have no companion seat of their own, as indices of seats in order: an
/// ordinary seat beside the place in the same row, which no other place takes. The places of a row
/// choose from house left, the seat on their left first, which gives as many as can have one.
std::vector<int> places_without_companion(const SeatPlan& plan,
                                          const std::vector<SeatBlock>& blocks);

}  // namespace rakeline::room
