// SPDX-License-Identifier: MIT
#include "sight/hidden_columns.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sight::hidden {
namespace {

const glm::dvec3 kRoomUp{0.0, 1.0, 0.0};

Tilt tilt_of(const geometry::Patch& surface) {
    RL_ASSERT(std::abs(glm::dot(surface.across, kRoomUp)) < 1e-9);
    return {glm::dot(surface.up, kRoomUp), glm::dot(surface.normal, kRoomUp)};
}

}  // namespace

glm::dvec3 in_patch_frame(const geometry::Patch& surface, const glm::dvec3& room_point) {
    const glm::dvec3 p = room_point - surface.centre;
    return {glm::dot(p, surface.across), glm::dot(p, surface.up), glm::dot(p, surface.normal)};
}

PictureColumns picture_columns(const geometry::Patch& surface,
                               const picture::Opening& opening,
                               int columns) {
    PictureColumns out;
    out.bottom_m = opening.uv.bottom;
    out.height_m = opening.uv.height();
    out.left_m = opening.uv.left;
    out.width_m = opening.uv.width();
    out.flat = surface.flat();
    out.radius_m = surface.radius_m;
    out.tilt = tilt_of(surface);
    out.places.reserve(static_cast<std::size_t>(columns));
    for (int j = 0; j < columns; ++j) {
        const double u = out.left_m + (j + 0.5) * out.width_m / columns;
        const glm::dvec3 p = in_patch_frame(surface, geometry::point_at(surface, {u, 0.0}));
        out.places.push_back({p.x, p.z});
    }
    return out;
}

bool sees_back(const PictureColumns& columns, const glm::dvec3& eye) {
    if (columns.flat) return eye.z <= 0.0;
    const double r = columns.radius_m;
    // Within the whole cylinder every part of it faces the eye.
    if (eye.x * eye.x + eye.z * (eye.z - 2.0 * r) < 0.0) return false;
    return std::ranges::any_of(columns.places, [&](const PlanPoint& p) {
        return -p.x * (eye.x - p.x) + (r - p.z) * (eye.z - p.z) <= 0.0;
    });
}

}  // namespace rakeline::sight::hidden
