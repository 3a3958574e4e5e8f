// SPDX-License-Identifier: MIT
#include "sight/viewing_angles.hpp"

#include <cmath>

namespace rakeline::sight {
namespace {

using picture::opening_point;

glm::dvec3 in_plan(const glm::dvec3& v) {
    return {v.x, 0.0, v.z};
}

double elevation(const glm::dvec3& from_eye) {
    return std::atan2(from_eye.y, std::hypot(from_eye.x, from_eye.z));
}

double angle_in_plan(const glm::dvec3& a, const glm::dvec3& b) {
    return geometry::angle_between(in_plan(a), in_plan(b));
}

double edge_angle(const geometry::Patch& surface,
                  const picture::Opening& opening,
                  const glm::dvec3& eye,
                  double across) {
    return geometry::angle_between(opening_point(surface, opening, across, -1.0) - eye,
                                   opening_point(surface, opening, across, 1.0) - eye);
}

}  // namespace

ViewingAngles viewing_angles(const geometry::Patch& surface,
                             const picture::Opening& opening,
                             const glm::dvec3& eye) {
    const glm::dvec3 centre = opening_point(surface, opening, 0.0, 0.0) - eye;
    const glm::dvec3 left = opening_point(surface, opening, -1.0, 0.0) - eye;
    const glm::dvec3 right = opening_point(surface, opening, 1.0, 0.0) - eye;
    const glm::dvec3 bottom = opening_point(surface, opening, 0.0, -1.0) - eye;
    const glm::dvec3 top = opening_point(surface, opening, 0.0, 1.0) - eye;
    const glm::dvec3 normal = geometry::normal_at(surface, opening.uv.centre());
    const glm::dvec3& far_side = glm::length(left) > glm::length(right) ? left : right;

    ViewingAngles out;
    out.subtended_width = geometry::angle_between(left, right);
    out.subtended_height = geometry::angle_between(bottom, top);
    out.elevation_top = elevation(top);
    out.elevation_centre = elevation(centre);
    out.elevation_bottom = elevation(bottom);
    out.off_axis = angle_in_plan(-centre, normal);
    out.off_axis_far = angle_in_plan(-far_side, normal);
    out.distance_m = glm::length(centre);
    out.distance_widths = out.distance_m / opening.width_m;
    out.distance_heights = out.distance_m / opening.height_m;
    out.edge_left = edge_angle(surface, opening, eye, -1.0);
    out.edge_right = edge_angle(surface, opening, eye, 1.0);
    return out;
}

double head_turn(const geometry::Patch& surface,
                 const picture::Opening& opening,
                 const glm::dvec3& eye,
                 const glm::dvec3& facing) {
    return angle_in_plan(facing, opening_point(surface, opening, 0.0, 0.0) - eye);
}

}  // namespace rakeline::sight
