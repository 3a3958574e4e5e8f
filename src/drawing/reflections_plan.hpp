// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

namespace rakeline::drawing {

/// Whether a list says what is drawn; in a small field it would run into itself.
enum class ReflectionWords { listed, none };

/// The plan with what the chosen seat hears: direct sound of every screen loudspeaker, its
/// strongest reflection, thick, and its first one, dashed, where that is another; before the screen
/// wall, how late and how strong the strongest is and by which wall it comes. Reflections of the
/// ceiling lie over the straight way. Refused without a seat or a screen loudspeaker.
base::Result<Drawing> reflections_plan(const study::Study& study,
                                       const DrawingChoice& choice,
                                       ReflectionWords words = ReflectionWords::listed);

}  // namespace rakeline::drawing
