// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

namespace rakeline::drawing {

/// Seats seen from above, turned to their facing and inked by the verdict of choice.seat_figure:
/// one fill and one outline a seat; a cross on those that miss and a triangle on those near a
/// limit, so that colour is never alone. Row letters stand at both ends of each row, and dashed
/// lines along the aisles between seats.
void add_plan_seats(const study::Study& study, const DrawingChoice& choice, Drawing& drawing);

}  // namespace rakeline::drawing
