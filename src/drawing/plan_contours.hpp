// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

namespace rakeline::drawing {

/// Whether the choice asks for contours and has a figure along the seats to draw them of.
bool wants_contours(const DrawingChoice& choice);

/// Lines of equal value of choice.seat_figure over the seats, block by block, at round numbers of
/// its unit with the number in a gap; a limit within the range as a heavy line of its own, with the
/// seats that it holds where it does not hold all. Lines of a balcony are dashed.
void add_plan_contours(const study::Study& study, const DrawingChoice& choice, Drawing& drawing);

}  // namespace rakeline::drawing
