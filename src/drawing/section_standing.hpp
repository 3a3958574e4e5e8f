// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/parts.hpp"

namespace rakeline::drawing {

/// Someone who stands in the middle of each cross aisle, as tall as sight lines are held against:
/// a line from the floor to the chin and a head about the eyes.
void add_section_standing(const study::Study& study, Drawing& drawing);

}  // namespace rakeline::drawing
