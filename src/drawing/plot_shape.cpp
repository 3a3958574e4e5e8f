// SPDX-License-Identifier: MIT
#include "drawing/plot_shape.hpp"

#include <algorithm>

namespace rakeline::drawing {

PlotShape filling_shape(glm::dvec2 field, double pitch, const PlotSpace& space) {
    // A field too low for its lettering still has charts: the words then collide.
    const double chart = std::max(field.y - space.rows * pitch, 2.0 * pitch) / space.heights;
    const double wide = (field.x - space.columns * pitch) / space.charts / chart;
    return {std::clamp(wide, 1.5, 4.5), pitch / chart};
}

}  // namespace rakeline::drawing
