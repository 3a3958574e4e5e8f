// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

namespace rakeline::room {

/// Open area over whole area of a sheet with round holes, 0 to 1; light loses it, sound needs it.
///
///     pi d^2 / (4 b^2)           square pattern
///     pi d^2 / (2 sqrt(3) b^2)   staggered at 60 degrees
///       d  hole diameter, b  pitch between centres of neighbouring holes, m
///
/// 0 where there are no holes. Holds while holes do not overlap, d <= b; beyond that the sheet
/// counts as all hole once the formula says so (1). Source: derived from one cell of the pattern,
/// b^2 for square, b^2 sqrt(3)/2 for staggered.
double open_area(const Perforation& perforation);

}  // namespace rakeline::room
