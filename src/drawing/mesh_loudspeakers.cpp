// SPDX-License-Identifier: MIT
#include "drawing/mesh_shapes.hpp"
#include "sound/direct_path.hpp"

#include <algorithm>
#include <cmath>

/// Loudspeakers as boxes of their own size whose front stands at the acoustic centre.
namespace rakeline::drawing {
namespace {

glm::dvec3 box_size(const room::Loudspeaker& loudspeaker) {
    return {loudspeaker.cabinet_width_m, loudspeaker.cabinet_height_m, loudspeaker.cabinet_depth_m};
}

glm::dmat4 loudspeaker_frame(const room::Loudspeaker& l) {
    const sound::LoudspeakerAxes axes = sound::axes_of(l);
    return frame_at({l.across_m, l.up_m, l.back_m}, axes.across, axes.up, axes.forward);
}

/// Inward normal of the wall within reach of a loudspeaker that hangs in the hall, else zero.
glm::dvec3 wall_behind(const room::Hall& hall, const room::Loudspeaker& l) {
    constexpr double kReach_m = 0.9;  // common practice, no source: a bracket's length and a box
    if (l.behind_screen) return glm::dvec3(0.0);
    const double to_side = room::half_width_at(hall, l.back_m) - std::abs(l.across_m);
    const double to_booth = hall.length_m - l.back_m;
    if (std::min(to_side, to_booth) > kReach_m) return glm::dvec3(0.0);
    if (to_booth < to_side) return {0.0, 0.0, -1.0};
    const double side = l.across_m < 0.0 ? -1.0 : 1.0;
    return {-side * std::cos(hall.splay_rad), 0.0, std::sin(hall.splay_rad)};
}

void add_front(Part& part, const glm::dvec3& size, const glm::dmat4& frame) {
    constexpr double kProud_m = 0.012;
    const double x = 0.5 * size.x - 0.03;
    const double y = 0.5 * size.y - 0.03;
    add_box(part, {.low = {-x, -y, -kProud_m}, .high = {x, y, kProud_m}, .paint = 1.0}, frame);
}

}  // namespace

void add_loudspeakers(const study::Study& study, RoomMesh& mesh) {
    const auto& loudspeakers = study.layout().loudspeakers;
    for (std::size_t i = 0; i < loudspeakers.size(); ++i) {
        Part part{.material = Material::loudspeaker,
                  .shows = {Shows::Kind::loudspeaker, static_cast<int>(i)}};
        const glm::dvec3 size = box_size(loudspeakers[i]);
        const glm::dmat4 frame = loudspeaker_frame(loudspeakers[i]);
        const Box body{.low = {-0.5 * size.x, -0.5 * size.y, -size.z},
                       .high = {0.5 * size.x, 0.5 * size.y, 0.0}};
        part.wall = wall_behind(study.layout().hall, loudspeakers[i]);
        add_box(part, body, frame);
        if (part.wall != glm::dvec3(0.0)) add_ghost(mesh.edges, body, frame, part.wall);
        add_front(part, size, frame);
        mesh.parts.push_back(std::move(part));
    }
}

}  // namespace rakeline::drawing
