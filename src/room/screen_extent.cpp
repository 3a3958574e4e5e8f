// SPDX-License-Identifier: MIT
#include "room/screen_extent.hpp"

#include <algorithm>

namespace rakeline::room {

geometry::Patch frame_patch(const Screen& screen) {
    const glm::dvec3 centre{0.0, screen.sill_m + 0.5 * screen.height_m, screen.setback_m};
    return geometry::standing_patch(centre, screen.radius_m, screen.tilt_rad);
}

std::optional<ScreenExtent> screen_extent(const Screen& screen) {
    const geometry::Patch patch = frame_patch(screen);
    const auto half_arc = geometry::half_arc_of_chord(patch, screen.width_m);
    if (!half_arc) return std::nullopt;
    const auto point = [&](double across, double up) {
        return geometry::point_at(patch, {across * *half_arc, up * 0.5 * screen.height_m});
    };
    // Toward the sides a curved sheet only comes nearer, and along its height it is straight: the
    // centre line and the edges, at their ends, hold all extremes.
    const glm::dvec3 foot = point(0.0, -1.0);
    ScreenExtent extent{foot.y, foot.y, foot.z, foot.z, point(1.0, 0.0).z};
    for (const double across : {0.0, 1.0}) {
        for (const double up : {-1.0, 1.0}) {
            const glm::dvec3 p = point(across, up);
            extent.low_m = std::min(extent.low_m, p.y);
            extent.high_m = std::max(extent.high_m, p.y);
            extent.hindmost_m = std::min(extent.hindmost_m, p.z);
            extent.foremost_m = std::max(extent.foremost_m, p.z);
            if (across > 0.0) extent.sides_m = std::min(extent.sides_m, p.z);
        }
    }
    return extent;
}

}  // namespace rakeline::room
