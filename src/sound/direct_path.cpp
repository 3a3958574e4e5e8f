// SPDX-License-Identifier: MIT
#include "sound/direct_path.hpp"

#include <cmath>
#include <optional>

namespace rakeline::sound {
namespace {

/// Angle between the way from `from` to `to` and the normal of the sheet where it first crosses.
std::optional<double> crossing_angle(const geometry::Patch& sheet,
                                     const glm::dvec3& from,
                                     const glm::dvec3& to) {
    const glm::dvec3 way = to - from;
    for (const geometry::PatchHit& hit : geometry::hits(sheet, {from, way})) {
        if (hit.t >= 1.0) break;
        const glm::dvec3 normal = geometry::normal_at(sheet, hit.uv);
        return geometry::angle_between(hit.from_front ? -way : way, normal);
    }
    return std::nullopt;
}

}  // namespace

LoudspeakerAxes axes_of(const room::Loudspeaker& loudspeaker) {
    const double cos_yaw = std::cos(loudspeaker.yaw_rad);
    const double sin_yaw = std::sin(loudspeaker.yaw_rad);
    const double cos_pitch = std::cos(loudspeaker.pitch_rad);
    const double sin_pitch = std::sin(loudspeaker.pitch_rad);
    LoudspeakerAxes axes;
    axes.across = {cos_yaw, 0.0, -sin_yaw};
    axes.forward = {sin_yaw * cos_pitch, -sin_pitch, cos_yaw * cos_pitch};
    axes.up = glm::cross(axes.forward, axes.across);
    return axes;
}

DirectPath direct_path(const room::Loudspeaker& loudspeaker,
                       const geometry::Patch& surface,
                       const glm::dvec3& ear) {
    const glm::dvec3 from{loudspeaker.across_m, loudspeaker.up_m, loudspeaker.back_m};
    const glm::dvec3 way = ear - from;
    const LoudspeakerAxes axes = axes_of(loudspeaker);
    const double x = glm::dot(way, axes.across);
    const double y = glm::dot(way, axes.up);
    const double z = glm::dot(way, axes.forward);

    DirectPath path;
    path.distance_m = glm::length(way);
    path.off_axis_across_rad = std::atan2(x, z);
    path.off_axis_up_rad = std::atan2(y, std::hypot(x, z));
    if (!loudspeaker.behind_screen) return path;
    if (const std::optional<double> angle = crossing_angle(surface, from, ear)) {
        path.through_sheet = true;
        path.sheet_angle_rad = *angle;
    }
    return path;
}

}  // namespace rakeline::sound
