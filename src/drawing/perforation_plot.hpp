// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/curve_plot.hpp"
#include "study/perforation_choice.hpp"

namespace rakeline::drawing {

/// Sheets set against each other: loss at 10 kHz across, light lost up. A disc stands for a sheet,
/// the larger the more minutes of arc a hole has from the nearest seat: an empty ring where nothing
/// is seen, half full where holes are, full where they beat visibly with the pixels. The sheet that
/// hangs is marked, the others are numbered as `names` lists them at the right. Unit: the height of
/// the chart.
Drawing perforation_plot(const study::SheetTrials& trials,
                         base::UnitSystem units,
                         const PlotShape& shape = {});

/// The shape that fills `field` with lettering rows `pitch` apart.
PlotShape perforation_plot_shape(glm::dvec2 field, double pitch);

}  // namespace rakeline::drawing
