// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

namespace rakeline::room {

/// Open area over whole area of a perforated or woven sheet, 0 to 1; light loses it, sound needs
/// it.
///
///     pi d^2 / (4 b^2)           square pattern
///     pi d^2 / (2 sqrt(3) b^2)   staggered at 60 degrees
///     d^2 / b^2                  woven
///       d  hole diameter, or side of the square opening between threads, m
///       b  pitch between centres of neighbouring holes, or of neighbouring threads, m
///
/// 0 where there are no holes. Holds while holes do not overlap, d <= b; beyond that the sheet
/// counts as all hole once the formula says so (1). Source: derived from one cell of the pattern,
/// b^2 for square and woven, b^2 sqrt(3)/2 for staggered. It does not hang on how the lattice is
/// turned.
///
/// The hydraulic diameter of a square opening, four times its area over its edge, is its side; so
/// what takes the diameter of a round hole (sound/perforation.hpp) takes a woven sheet's side.
double open_area(const Perforation& perforation);

}  // namespace rakeline::room
