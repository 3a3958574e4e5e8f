// SPDX-License-Identifier: MIT
#include "drawing/luminance_shading.hpp"
#include "drawing/room_mesh.hpp"

namespace rakeline::drawing {
namespace {

/// Toward the seats from the picture, whose own triangles lie a little off a curved surface, and
/// behind the masking.
constexpr double kAhead_m = 0.008;

Vertex vertex_at(const geometry::Patch& surface, glm::dvec2 uv, double place) {
    const glm::dvec3 normal = geometry::normal_at(surface, uv);
    return {geometry::point_at(surface, uv) + kAhead_m * normal, normal, {place, 0.0}};
}

}  // namespace

ScreenLuminance screen_luminance(const study::Study& study,
                                 const study::SeatLuminance& luminance,
                                 base::UnitSystem units) {
    ScreenLuminance out;
    const auto& o = study.picture.openings.at(static_cast<std::size_t>(luminance.format)).uv;
    const glm::dvec2 half = 0.5 * glm::dvec2(o.width(), o.height());
    for (const light::MapPlace& place : luminance.map.places)
        out.part.vertices.push_back(vertex_at(study.picture.surface,
                                              o.centre() + half * place.halves,
                                              palette_place(luminance.scale, place.cdm2)));
    for (const auto& triangle : luminance.map.triangles)
        for (const int corner : triangle)
            out.part.indices.push_back(static_cast<unsigned>(corner));
    const auto levels = luminance_levels(luminance.scale, units);
    if (levels.size() < 2) return out;
    out.first_contour = palette_place(luminance.scale, levels[0].cdm2);
    // From the first to the last, none of which lies beyond the palette's ends.
    out.contour_step = (palette_place(luminance.scale, levels.back().cdm2) - out.first_contour) /
                       static_cast<double>(levels.size() - 1);
    return out;
}

}  // namespace rakeline::drawing
