// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

/// Loudspeakers in plan and section: cabinets at their true size and, where asked for, how wide
/// the screen channels send.
namespace rakeline::drawing {

/// From above; the axes of all but the sub-bass.
void add_plan_loudspeakers(const study::Study& study,
                           const DrawingChoice& choice,
                           Drawing& drawing);

/// From the right side; the axes of those behind the screen, the others fainter.
void add_section_loudspeakers(const study::Study& study,
                              const DrawingChoice& choice,
                              Drawing& drawing);

}  // namespace rakeline::drawing
