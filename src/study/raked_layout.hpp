// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <vector>

/// Floors put into a document. Private to study/: rake_plan.hpp is the way in.
namespace rakeline::study {

/// Risers from floor to floor, those alike together.
std::vector<room::Flight> flights_of(const std::vector<double>& floor_m);

/// The block with risers that stay with its rows when those move: an equal-clearance floor as
/// flights, others as they are.
room::SeatBlock with_fixed_risers(const room::Layout& layout, int block);

}  // namespace rakeline::study
