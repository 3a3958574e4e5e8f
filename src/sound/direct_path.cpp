// SPDX-License-Identifier: MIT
#include "sound/direct_path.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace rakeline::sound {
namespace {

/// Normal of the sheet where the way first crosses it, toward where the way goes.
std::optional<glm::dvec3> crossing_normal(const geometry::Patch& sheet,
                                          const glm::dvec3& from,
                                          const glm::dvec3& way) {
    for (const geometry::PatchHit& hit : geometry::hits(sheet, {from, way})) {
        if (hit.t >= 1.0) break;
        const glm::dvec3 normal = geometry::normal_at(sheet, hit.uv);
        return hit.from_front ? -normal : normal;
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
    const glm::dvec3 own(glm::dot(way, axes.across), glm::dot(way, axes.up),
                         glm::dot(way, axes.forward));

    DirectPath path;
    path.distance_m = glm::length(way);
    path.off_axis_across_rad = std::atan2(own.x, own.z);
    path.off_axis_up_rad = std::atan2(own.y, std::sqrt(own.x * own.x + own.z * own.z));
    path.off_axis = off_axis_of(own);
    if (!loudspeaker.behind_screen) return path;
    if (const std::optional<glm::dvec3> normal = crossing_normal(surface, from, way)) {
        path.through_sheet = true;
        path.cos_sheet = std::clamp(glm::dot(way, *normal) / path.distance_m, 0.0, 1.0);
        path.sheet_angle_rad = geometry::angle_between(way, *normal);
    }
    return path;
}

}  // namespace rakeline::sound
