// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/curve_plot.hpp"
#include "study/perforation_choice.hpp"

namespace rakeline::drawing {

/// Whether the sheets are named at the right by their numbers; beside a table they need not be.
enum class SheetNames { listed, none };

/// Sheets set against each other: loss at 10 kHz across, light lost up. A disc stands for a sheet
/// with holes, the larger the more minutes of arc a hole has from the nearest seat: an empty ring
/// where nothing is seen, half full where holes are, full where they beat visibly with the pixels.
/// Numbers are those of the trials, "now" the sheet that hangs; one without holes loses so much
/// that it is only named. Unit: the height of the chart.
Drawing perforation_plot(const study::SheetTrials& trials,
                         const PlotShape& shape = {.wide = 1.6, .pitch = 0.075},
                         SheetNames names = SheetNames::listed);

/// The shape that fills `field` with lettering rows `pitch` apart.
PlotShape perforation_plot_shape(glm::dvec2 field, double pitch, SheetNames names);

}  // namespace rakeline::drawing
