// SPDX-License-Identifier: MIT
#include "picture/opening.hpp"

#include "base/assert.hpp"

#include <algorithm>

namespace rakeline::picture {
namespace {

struct Size {
    double width_m = 0.0;
    double height_m = 0.0;
};

/// The largest rectangle of the ratio within the frame; all masking modes end there where the
/// moving direction alone can't reach the ratio.
Size largest_of_ratio(const room::Screen& screen, double ratio) {
    const double width_at_full_height = ratio * screen.height_m;
    if (width_at_full_height <= screen.width_m) return {width_at_full_height, screen.height_m};
    return {screen.width_m, screen.width_m / ratio};
}

Size opening_size(const room::Screen& screen, const room::Format& format) {
    const Size largest = largest_of_ratio(screen, format.aspect_ratio);
    if (screen.masking != room::MaskingMode::four_way || !format.opening_width_m) return largest;
    const double width = std::min(*format.opening_width_m, largest.width_m);
    return {width, width / format.aspect_ratio};
}

/// Height of the opening's centre over the frame's centre.
double centre_rise(const room::Screen& screen, double opening_height_m) {
    if (screen.masking != room::MaskingMode::common_width) return 0.0;
    const double spare = 0.5 * (screen.height_m - opening_height_m);
    switch (screen.moving_edge) {
        case room::MovingEdge::top:
            return -spare;
        case room::MovingEdge::bottom:
            return spare;
        case room::MovingEdge::both:
            return 0.0;
    }
    return 0.0;
}

}  // namespace

geometry::Patch screen_patch(const room::Screen& screen) {
    const glm::dvec3 centre(0.0, screen.sill_m + 0.5 * screen.height_m, screen.setback_m);
    return geometry::standing_patch(centre, screen.radius_m, screen.tilt_rad);
}

Opening masked_opening(const room::Screen& screen, const room::Format& format) {
    RL_ASSERT(format.aspect_ratio > 0.0 && screen.width_m > 0.0 && screen.height_m > 0.0);
    const Size size = opening_size(screen, format);
    const auto half_arc = geometry::half_arc_of_chord(screen_patch(screen), size.width_m);
    RL_ASSERT(half_arc);
    const double rise = centre_rise(screen, size.height_m);
    const geometry::Rectangle uv{.left = -*half_arc,
                                 .right = *half_arc,
                                 .bottom = rise - 0.5 * size.height_m,
                                 .top = rise + 0.5 * size.height_m};
    return {.uv = uv,
            .width_m = size.width_m,
            .height_m = size.height_m,
            .area_m2 = 2.0 * *half_arc * size.height_m};
}

glm::dvec3 opening_point(const geometry::Patch& patch,
                         const Opening& opening,
                         double across,
                         double up) {
    const geometry::Rectangle& r = opening.uv;
    const glm::dvec2 half_size(0.5 * r.width(), 0.5 * r.height());
    return geometry::point_at(patch, r.centre() + half_size * glm::dvec2(across, up));
}

}  // namespace rakeline::picture
