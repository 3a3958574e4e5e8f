// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "drawing/plot_shape.hpp"

namespace rakeline::drawing {

/// The shape of a loss plot that fills `field` (in any unit) with lettering rows `pitch` apart.
PlotShape loss_plot_shape(glm::dvec2 field, double pitch);

/// Two charts over frequency. Left: what the sheet takes at five angles, the spread of published
/// conventions shaded, measured points, and the limits on it. Right: one screen channel through its
/// gap and the sheet, and the boost by third octaves that makes it good; it is left out where no
/// screen channel stands behind the sheet. `loudspeaker`: as study::loss_curves takes it. Unit of
/// the drawing: the height of a chart.
Drawing loss_plot(const study::Study& study,
                  std::optional<int> loudspeaker,
                  base::UnitSystem units,
                  const PlotShape& shape = {});

}  // namespace rakeline::drawing
