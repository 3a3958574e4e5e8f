// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "drawing/plot_shape.hpp"
#include "light/curvature_help.hpp"

namespace rakeline::drawing {

/// The shape that fills `field` (in any unit) with lettering rows `pitch` apart.
PlotShape plot_shape(glm::dvec2 field, double pitch);

/// Two charts side by side: how even the light is over the sagitta and over the tilt of the screen,
/// below each what the picture pays for it: crop, bow over the opening's height, and part of the
/// opening left dark. The screen as it is and the most even
/// one are marked. Unit of the drawing: the height of the upper chart.
Drawing curve_plot(const light::CurvatureHelp& help,
                   base::UnitSystem units,
                   const PlotShape& shape = {});

}  // namespace rakeline::drawing
