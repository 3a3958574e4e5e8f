// SPDX-License-Identifier: MIT
#include "drawing/screen_spill.hpp"

#include "drawing/screen_face.hpp"
#include "geometry/densified.hpp"

#include <cmath>
#include <limits>

namespace rakeline::drawing {
namespace {

using geometry::Rectangle;
using Points = std::vector<glm::dvec2>;

/// Slivers that rounding leaves where rim and edge lie on each other, as a share of the opening.
constexpr double kSliver = 1e-9;

/// What lies left, right, under and over a rectangle, without overlap.
std::array<Rectangle, 4> beside(const Rectangle& r) {
    constexpr double kFar = 1e6;
    return {{{-kFar, r.left, -kFar, kFar},
             {r.right, kFar, -kFar, kFar},
             {r.left, r.right, -kFar, r.bottom},
             {r.left, r.right, r.top, kFar}}};
}

/// Points of the map's image of a polygon, those without one left out.
template <class Map>
Points mapped(const Points& polygon, Map map) {
    Points out;
    for (const glm::dvec2& p : polygon) {
        if (const auto q = map(p)) out.push_back(*q);
    }
    return out;
}

/// The runs of the rim that lie inside the opening, where the masking does not hide them.
Polygons rim_inside(const Points& rim, const Rectangle& opening) {
    const auto inside = [&](glm::dvec2 p) {
        return p.x > opening.left && p.x < opening.right && p.y > opening.bottom &&
               p.y < opening.top;
    };
    Polygons runs;
    bool open = false;
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const glm::dvec2 a = rim[i], b = rim[(i + 1) % rim.size()];
        if (!inside(a) || !inside(b)) {
            open = false;
            continue;
        }
        if (!open) runs.push_back({a});
        runs.back().push_back(b);
        open = true;
    }
    return runs;
}

void keep(Polygons& polygons, Points polygon, double least_m2) {
    if (polygon.size() < 3 || std::abs(geometry::signed_area(polygon)) < least_m2) return;
    polygons.push_back(std::move(polygon));
}

}  // namespace

Polygons light_on_masking(const picture::ProjectedPicture& picture,
                          const picture::Opening& opening) {
    Polygons out;
    for (const Rectangle& window : beside(opening.uv))
        keep(out, geometry::clipped(picture.shape.outline, window), kSliver * opening.area_m2);
    return out;
}

Polygons dark_in_opening(const picture::ProjectedPicture& picture,
                         const picture::Opening& opening) {
    const picture::PictureMap& map = picture.map;
    const double step = 1.0 / picture::kSegmentsPerEdge;
    const Points border = geometry::densified(corners(opening.uv), step * opening.uv.width());
    const Points in_gate = mapped(border, [&](glm::dvec2 uv) { return map.gate_from_screen(uv); });
    const glm::dvec2 half = 0.5 * picture.gate_size_m;
    Polygons out;
    for (const Rectangle& window : beside({-half.x, half.x, -half.y, half.y})) {
        const Points dark = geometry::clipped(in_gate, window);
        // Its side along the gate's edge is straight there and bowed on a curved surface.
        const Points fine = geometry::densified(dark, step * picture.gate_size_m.x);
        keep(out, mapped(fine, [&](glm::dvec2 gate) { return map.screen_from_gate(gate); }),
             kSliver * opening.area_m2);
    }
    return out;
}

void add_face_light(Face& face) {
    if (!face.chosen.picture) return;
    constexpr double kInside = 0.06, kAstray = 0.45;
    const auto& picture = *face.chosen.picture;
    face.add(Fill{picture.shape.outline, Ink::beam, kInside, face.projector()});
    if (!face.chosen.opening) return;
    for (Points& polygon : light_on_masking(picture, *face.chosen.opening))
        face.add(Fill{std::move(polygon), Ink::near, kAstray, face.projector()});
}

void add_face_shortfall(Face& face) {
    if (!face.chosen.picture || !face.chosen.opening) return;
    constexpr double kDark = 0.6;
    const auto& picture = *face.chosen.picture;
    for (Points& polygon : dark_in_opening(picture, *face.chosen.opening))
        face.add(Fill{std::move(polygon), Ink::missed, kDark, face.screen()});
    for (Points& line : rim_inside(picture.shape.outline, face.chosen.opening->uv))
        face.add(Line{.points = std::move(line),
                      .weight = Weight::seen,
                      .ink = Ink::missed,
                      .closed = false,
                      .dashed = false,
                      .shows = face.projector()});
}

}  // namespace rakeline::drawing
