// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "drawing/plot_shape.hpp"

namespace rakeline::drawing {

/// Decay times of the hall over the octaves from 125 Hz to 4 kHz, by Eyring and by Sabine, with the
/// recommended range between close listening and speech where the volume has one. Read from the
/// study's figures. Unit of the drawing: the height of the chart.
Drawing decay_plot(const study::Study& study, const PlotShape& shape = {});

/// The shape that fills `field` (in any unit) with lettering rows `pitch` apart.
PlotShape decay_plot_shape(glm::dvec2 field, double pitch);

}  // namespace rakeline::drawing
