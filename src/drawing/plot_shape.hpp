// SPDX-License-Identifier: MIT
#pragma once

#include <glm/vec2.hpp>

/// How wide the charts of a plot are drawn, so that it fills a field with lettering of its own
/// size.
namespace rakeline::drawing {

/// Both in heights of the upper chart. Where the field to fill is low, wider lettering rows keep
/// the words apart.
struct PlotShape {
    double wide = 2.6;    ///< of a chart
    double pitch = 0.15;  ///< between lines of lettering
    bool operator==(const PlotShape&) const = default;
};

/// What a plot needs beside its charts, in rows of lettering.
struct PlotSpace {
    double rows = 0.0;     ///< above, between and below the charts
    double columns = 0.0;  ///< left, between and right of them
    double charts = 1.0;   ///< that stand side by side
    double heights = 1.0;  ///< of all charts above each other, over that of the upper one
};

/// The shape that fills `field` (in any unit) with lettering rows `pitch` apart.
PlotShape filling_shape(glm::dvec2 field, double pitch, const PlotSpace& space);

}  // namespace rakeline::drawing
