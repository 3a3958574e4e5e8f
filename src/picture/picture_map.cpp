// SPDX-License-Identifier: MIT
#include "picture/picture_map.hpp"

#include "base/units.hpp"

#include <cmath>

namespace rakeline::picture {

using geometry::Patch;
using geometry::Ray;

Ray PictureMap::ray(glm::dvec2 gate_m) const {
    const glm::dvec2 p = gate_m + pose_.shift_m;
    return {pose_.lens, pose_.image_distance_m * pose_.axis + pose_.squeeze * p.x * pose_.right +
                            p.y * pose_.up};
}

std::optional<glm::dvec2> PictureMap::screen_from_gate(glm::dvec2 gate_m) const {
    const auto hit = geometry::front_hit(surface_, ray(gate_m));
    if (!hit) return std::nullopt;
    return hit->uv;
}

std::optional<glm::dvec2> PictureMap::gate_from_screen(glm::dvec2 uv) const {
    if (!surface_.flat() && std::abs(uv.x) > 0.5 * base::kPi * surface_.radius_m) {
        return std::nullopt;
    }
    const glm::dvec3 d = geometry::point_at(surface_, uv) - pose_.lens;
    const double depth = glm::dot(d, pose_.axis);
    if (!(depth > 0.0)) return std::nullopt;
    if (!(glm::dot(d, geometry::normal_at(surface_, uv)) < 0.0)) return std::nullopt;
    const double scale = pose_.image_distance_m / depth;
    return glm::dvec2(scale * glm::dot(d, pose_.right) / pose_.squeeze,
                      scale * glm::dot(d, pose_.up)) -
           pose_.shift_m;
}

std::optional<double> PictureMap::area_ratio(glm::dvec2 gate_m) const {
    // A gate element dx dy stands for squeeze dx dy on the plane at distance b before the lens,
    // whose normal is the axis. With q the ray's direction to that plane (so q . axis = b) it
    // fills the solid angle  dW = squeeze dx dy (b / |q|) / |q|^2.  The surface, met at t q under
    // the incidence i with cos i = |q . n| / |q|, gets  dA = dW (t |q|)^2 / cos i, so
    //     dA / (dx dy) = squeeze b t^2 / |q . n|.
    const Ray light = ray(gate_m);
    const auto hit = geometry::front_hit(surface_, light);
    if (!hit) return std::nullopt;
    const double facing =
        std::abs(glm::dot(light.direction, geometry::normal_at(surface_, hit->uv)));
    return pose_.squeeze * pose_.image_distance_m * hit->t * hit->t / facing;
}

std::optional<glm::dmat3> PictureMap::homography() const {
    if (!surface_.flat()) return std::nullopt;
    // The ray's direction is linear in (x, y, 1): q = M (x, y, 1). It meets the plane at
    // t = h / (-q . n), h the lens's height over the plane, so with o the lens's foot in (u, v):
    //     (u, v) = o + (q . across, q . up) h / (-q . n),
    // which is the ratio of two linear forms.
    const Pose& p = pose_;
    const glm::dvec3 q_x = p.squeeze * p.right;
    const glm::dvec3 q_y = p.up;
    const glm::dvec3 q_1 =
        p.image_distance_m * p.axis + p.shift_m.x * p.squeeze * p.right + p.shift_m.y * p.up;
    const glm::dvec2 foot = geometry::coordinates_of(surface_, p.lens);
    const double height = glm::dot(p.lens - surface_.centre, surface_.normal);
    const auto column = [&](const glm::dvec3& q) {
        const double w = -glm::dot(q, surface_.normal);
        return glm::dvec3(foot.x * w + height * glm::dot(q, surface_.across),
                          foot.y * w + height * glm::dot(q, surface_.up), w);
    };
    return glm::dmat3(column(q_x), column(q_y), column(q_1));
}

Pose aimed_pose(const glm::dvec3& lens, double yaw_rad, double pitch_rad, double roll_rad) {
    // Yaw about the room's vertical, pitch about the yawed right, roll about the resulting axis.
    const glm::dvec3 level_axis(std::sin(yaw_rad), 0.0, -std::cos(yaw_rad));
    const glm::dvec3 level_right(std::cos(yaw_rad), 0.0, std::sin(yaw_rad));
    const glm::dvec3 vertical(0.0, 1.0, 0.0);
    const double c = std::cos(pitch_rad);
    const double s = std::sin(pitch_rad);
    const glm::dvec3 pitched_up = c * vertical + s * level_axis;
    Pose pose;
    pose.lens = lens;
    pose.axis = c * level_axis - s * vertical;
    pose.right = std::cos(roll_rad) * level_right - std::sin(roll_rad) * pitched_up;
    pose.up = std::cos(roll_rad) * pitched_up + std::sin(roll_rad) * level_right;
    return pose;
}

}  // namespace rakeline::picture
