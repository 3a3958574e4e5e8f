// SPDX-License-Identifier: MIT
#include "drawing/hidden_regions.hpp"
#include "drawing/room_mesh.hpp"
#include "study/seat_view.hpp"

/// The hidden part of one seat's picture as triangles on the picture surface.
namespace rakeline::drawing {

Part hidden_part(const study::Study& study, int format, int seat) {
    Part part{.material = Material::hidden, .shows = {Shows::Kind::screen, 0}};
    const geometry::Patch& surface = study.picture.surface;
    const auto& opening = study.picture.openings.at(static_cast<std::size_t>(format)).uv;
    const auto add = [&](glm::dvec2 uv) {
        part.vertices.push_back(
            {geometry::point_at(surface, uv), geometry::normal_at(surface, uv), uv});
    };
    const study::SeatView view = study::seat_view(study, format, seat);
    for (const HiddenRegion& region : hidden_regions(view.clear, opening)) {
        auto at = static_cast<unsigned>(part.vertices.size());
        for (std::size_t i = 0; i < region.low.size(); ++i) {
            add(region.low[i]);
            add(region.high[i]);
        }
        for (std::size_t i = 0; i + 1 < region.low.size(); ++i, at += 2)
            part.indices.insert(part.indices.end(), {at, at + 2, at + 3, at, at + 3, at + 1});
    }
    return part;
}

}  // namespace rakeline::drawing
