// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/parts.hpp"

namespace rakeline::drawing {

/// Eyes of every row as dots, lettered, and their sight lines to the point of focus in the chosen
/// format, by the verdict of the C-value; the worst of neighbouring rows that miss says by how
/// much. In each cross aisle someone stands.
void add_section_sight(const study::Study& study,
                       const DrawingChoice& choice,
                       const Chosen& chosen,
                       Drawing& drawing);

}  // namespace rakeline::drawing
