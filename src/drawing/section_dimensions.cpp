// SPDX-License-Identifier: MIT
#include "drawing/section_dimensions.hpp"

#include "drawing/section_floor.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using Kind = Shows::Kind;

glm::dvec2 on_section(const glm::dvec3& p) {
    return {p.z, p.y};
}

void add(Drawing& drawing,
         const char* prefix,
         const Segment& between,
         double offset_m,
         Shows what,
         std::optional<double> length_m = {}) {
    Dimension d;
    d.from = between.from;
    d.to = between.to;
    d.offset_m = offset_m;
    d.prefix = prefix;
    d.length_m = length_m;
    d.shows = what;
    drawing.items.push_back(d);
}

/// Sill and picture height stand one over the other, before the screen wall.
void add_screen_heights(const study::Study& study,
                        const Chosen& chosen,
                        double off_m,
                        Drawing& drawing) {
    const room::Screen& screen = study.layout().screen;
    const geometry::Patch& patch = study.picture.surface;
    const glm::dvec2 foot = on_section(geometry::point_at(patch, {0.0, -0.5 * screen.height_m}));
    // The sill is the frame's height before it is tilted: that is the figure that is built to.
    add(drawing, "sill ", {{foot.x, 0.0}, {foot.x, screen.sill_m}}, foot.x + off_m,
        showing(Kind::screen));
    if (!chosen.opening) return;
    const glm::dvec2 low = on_section(geometry::point_at(patch, {0.0, chosen.opening->uv.bottom}));
    const glm::dvec2 high = on_section(geometry::point_at(patch, {0.0, chosen.opening->uv.top}));
    add(drawing, "picture ", {low, high}, low.x + off_m, showing(Kind::screen),
        chosen.opening->height_m);
}

void add_throw(const Chosen& chosen, Drawing& drawing) {
    if (!chosen.picture) return;
    const picture::ProjectedPicture& picture = *chosen.picture;
    add(drawing, "throw ", {on_section(picture.axis_point), on_section(picture.map.pose().lens)},
        0.0, showing(Kind::projector, chosen.projector), picture.throw_m);
}

/// Behind the projectors, so that it crosses none of them.
void add_port(const study::Study& study, const Chosen& chosen, Drawing& drawing) {
    if (chosen.projector < 0) return;
    const room::Layout& layout = study.layout();
    const room::Port& port = layout.projectors[static_cast<std::size_t>(chosen.projector)].port;
    const double z = layout.hall.length_m;
    constexpr double kBehindLens_m = 1.4;
    double off_m = kBehindLens_m;
    for (const room::Projector& projector : layout.projectors)
        off_m = std::max(off_m, projector.back_m - z + kBehindLens_m);
    add(drawing, "port ", {{z, 0.0}, {z, port.up_m}}, -off_m,
        showing(Kind::projector, chosen.projector));
}

/// Front edge of a row's tread on the section, if a step of this height stands there.
std::optional<glm::dvec2> step_edge(const std::vector<FloorPiece>& pieces,
                                    int row,
                                    double riser_m) {
    constexpr double kSame_m = 0.01;
    std::optional<glm::dvec2> edge;
    for (const FloorPiece& piece : pieces)
        if (piece.row == row) edge = piece.from;
    if (!edge) return std::nullopt;
    for (const FloorPiece& piece : pieces) {
        const glm::dvec2 foot = *edge - glm::dvec2(0.0, riser_m);
        if (glm::length(piece.to - foot) < kSame_m) return edge;
    }
    return std::nullopt;
}

void add_steepest_riser(const study::Study& study, Drawing& drawing) {
    const study::Figure* risers = study::find_figure(study, "room.riser");
    if (!risers || risers->values.empty()) return;
    const auto steepest =
        std::max_element(risers->values.begin(), risers->values.end(),
                         [](const study::Value& a, const study::Value& b) { return a.si < b.si; });
    if (steepest->si <= 0.0) return;
    const auto edge = step_edge(floor_pieces(study.seats), steepest->index, steepest->si);
    if (!edge) return;
    Dimension d;
    d.from = *edge - glm::dvec2(0.0, steepest->si);
    d.to = *edge;
    d.unit = base::Unit::millimetre;
    d.prefix = "riser ";
    d.shows = showing(Kind::row, steepest->index);
    drawing.items.push_back(d);
}

}  // namespace

void add_section_dimensions(const study::Study& study, const Chosen& chosen, Drawing& drawing) {
    const room::Hall& hall = study.layout().hall;
    const double off_m = 0.03 * hall.length_m;
    add_screen_heights(study, chosen, off_m, drawing);
    add(drawing, "ceiling ", {{0.0, 0.0}, {0.0, hall.height_m}}, 3.0 * off_m, showing(Kind::hall));
    add_throw(chosen, drawing);
    add_port(study, chosen, drawing);
    add_steepest_riser(study, drawing);
}

}  // namespace rakeline::drawing
