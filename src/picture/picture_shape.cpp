// SPDX-License-Identifier: MIT
#include "picture/picture_shape.hpp"

#include "geometry/densified.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace rakeline::picture {
namespace {

using Outline = std::vector<glm::dvec2>;

/// The rim of the picture, counter-clockwise from bottom left; even steps in the gate.
std::optional<Outline> picture_outline(const PictureMap& map, glm::dvec2 gate_size_m) {
    const glm::dvec2 h = 0.5 * gate_size_m;
    const std::array<glm::dvec2, 4> gate{glm::dvec2(-h.x, -h.y), glm::dvec2(h.x, -h.y),
                                         glm::dvec2(h.x, h.y), glm::dvec2(-h.x, h.y)};
    Outline outline;
    outline.reserve(4 * kSegmentsPerEdge);
    for (std::size_t edge = 0; edge < 4; ++edge) {
        const glm::dvec2 step = (gate[(edge + 1) % 4] - gate[edge]) / double{kSegmentsPerEdge};
        for (int k = 0; k < kSegmentsPerEdge; ++k) {
            const auto uv = map.screen_from_gate(gate[edge] + static_cast<double>(k) * step);
            if (!uv) return std::nullopt;
            outline.push_back(*uv);
        }
    }
    return outline;
}

/// Greatest signed distance of an edge from the line between its ends, positive to the left of
/// the walk from first to last. The parabola through the best sample and its neighbours finds the
/// top between samples.
double sagitta(std::span<const glm::dvec2> edge) {
    const glm::dvec2 chord = edge.back() - edge.front();
    const glm::dvec2 left = glm::dvec2(-chord.y, chord.x) / glm::length(chord);
    const auto rise = [&](std::size_t i) { return glm::dot(edge[i] - edge.front(), left); };
    std::size_t best = 1;
    for (std::size_t i = 1; i + 1 < edge.size(); ++i) {
        if (std::abs(rise(i)) > std::abs(rise(best))) best = i;
    }
    const double before = rise(best - 1);
    const double top = rise(best);
    const double after = rise(best + 1);
    const double bend = before - 2.0 * top + after;
    if (bend == 0.0) return top;
    const double slope = 0.5 * (after - before);
    return top - 0.5 * slope * slope / bend;
}

/// Edge `index` of the outline (0 bottom, 2 top) with both its corners.
Outline edge_of(const Outline& outline, std::size_t index) {
    Outline edge;
    const std::size_t first = index * kSegmentsPerEdge;
    for (std::size_t k = 0; k <= kSegmentsPerEdge; ++k) {
        edge.push_back(outline[(first + k) % outline.size()]);
    }
    return edge;
}

/// (second - first) over their mean.
double imbalance(double first, double second) {
    return 2.0 * (second - first) / (second + first);
}

void measure_keystone(const geometry::Patch& surface, PictureShape& shape) {
    const auto span = [&](std::size_t a, std::size_t b) {
        return glm::length(geometry::point_at(surface, shape.corners[a]) -
                           geometry::point_at(surface, shape.corners[b]));
    };
    const auto& [top_left, top_right, bottom_right, bottom_left] = shape.corners;
    shape.keystone_vertical = imbalance(span(0, 1), span(2, 3));
    shape.keystone_horizontal = imbalance(span(0, 3), span(1, 2));
    const double left = std::atan2(top_left.x - bottom_left.x, top_left.y - bottom_left.y);
    const double right = std::atan2(bottom_right.x - top_right.x, top_right.y - bottom_right.y);
    shape.side_slope_rad = 0.5 * (left + right);
}

/// Gate area whose light falls inside a polygon on the surface.
double gate_area(const PictureMap& map, const Outline& polygon) {
    Outline gate;
    for (const glm::dvec2 uv : polygon) {
        // The polygon lies within the picture's rim or a hair outside it, where the map still
        // holds; a point that grazes the surface adds no area and is left out.
        if (const auto g = map.gate_from_screen(uv)) gate.push_back(*g);
    }
    return geometry::signed_area(gate);
}

}  // namespace

std::optional<PictureShape> picture_shape(const PictureMap& map, glm::dvec2 gate_size_m) {
    auto outline = picture_outline(map, gate_size_m);
    if (!outline) return std::nullopt;
    PictureShape shape;
    const auto corner = [&](std::size_t edge) { return (*outline)[edge * kSegmentsPerEdge]; };
    shape.corners = {corner(3), corner(2), corner(1), corner(0)};
    measure_keystone(map.surface(), shape);
    if (!map.surface().flat()) {  // a plane keeps straight lines straight
        shape.bow_bottom_m = sagitta(edge_of(*outline, 0));
        shape.bow_top_m = -sagitta(edge_of(*outline, 2));  // walked from right to left
    }
    shape.outline = std::move(*outline);
    return shape;
}

Coverage coverage(const PictureMap& map,
                  glm::dvec2 gate_size_m,
                  const PictureShape& shape,
                  const Opening& opening) {
    const Outline inside = geometry::clipped(shape.outline, opening.uv);
    const double inside_m2 = geometry::signed_area(inside);
    const double picture_m2 = geometry::signed_area(shape.outline);
    // The edges of the opening map to curves in the gate only where the surface is curved.
    const double step_m = opening.uv.width() / kSegmentsPerEdge;
    const Outline cut = map.surface().flat() ? inside : geometry::densified(inside, step_m);
    const double used = gate_area(map, cut) / (gate_size_m.x * gate_size_m.y);
    return {.overfill = std::max(0.0, (picture_m2 - inside_m2) / opening.area_m2),
            .crop = std::clamp(1.0 - used, 0.0, 1.0),
            .uncovered = std::clamp(1.0 - inside_m2 / opening.area_m2, 0.0, 1.0)};
}

}  // namespace rakeline::picture
