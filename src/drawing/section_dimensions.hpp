// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/parts.hpp"

namespace rakeline::drawing {

/// Sill, picture height, ceiling, throw, port height and the riser of the steepest row.
void add_section_dimensions(const study::Study& study, const Chosen& chosen, Drawing& drawing);

}  // namespace rakeline::drawing
