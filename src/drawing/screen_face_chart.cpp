// SPDX-License-Identifier: MIT
#include "base/units.hpp"
#include "drawing/screen_face.hpp"

#include <cmath>

/// The framing chart as the lens throws it: twelve columns, one centre line, one circle, each point
/// through the exact map, so that keystone and bows are seen in it.
namespace rakeline::drawing {
namespace {

constexpr int kColumns = 12;
constexpr double kCircle = 0.36;  ///< radius over the picture's height, as in the 3D view

void add_chart_line(Face& face, std::vector<glm::dvec2> points, Weight weight, bool closed) {
    face.add(Line{.points = std::move(points),
                  .weight = weight,
                  .ink = Ink::quiet,
                  .closed = closed,
                  .dashed = false,
                  .shows = face.projector()});
}

/// A circle of the picture: in an anamorphic gate it stands narrow.
std::vector<glm::dvec2> circle(const picture::ProjectedPicture& picture) {
    constexpr int kPoints = 96;
    const double radius_m = kCircle * picture.gate_size_m.y;
    std::vector<glm::dvec2> points;
    for (int i = 0; i < kPoints; ++i) {
        const double angle = 2.0 * base::kPi * i / kPoints;
        const glm::dvec2 gate(radius_m * std::cos(angle) / picture.map.pose().squeeze,
                              radius_m * std::sin(angle));
        if (const auto uv = picture.map.screen_from_gate(gate)) points.push_back(*uv);
    }
    return points;
}

}  // namespace

void add_face_chart(Face& face) {
    if (!face.chosen.picture) return;
    const picture::ProjectedPicture& picture = *face.chosen.picture;
    for (int i = 1; i < kColumns; ++i) {
        const double across = 2.0 * i / kColumns - 1.0;
        add_chart_line(face, surface_line(picture, {across, -1.0}, {across, 1.0}), Weight::helper,
                       false);
    }
    add_chart_line(face, surface_line(picture, {-1.0, 0.0}, {1.0, 0.0}), Weight::helper, false);
    add_chart_line(face, circle(picture), Weight::helper, true);
}

}  // namespace rakeline::drawing
