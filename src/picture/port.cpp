// SPDX-License-Identifier: MIT
#include "picture/port.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakeline::picture {
namespace {

/// The picture points whose light reaches farthest.
std::vector<glm::dvec3> deciding_points(const PortBeam& beam) {
    const geometry::Patch& surface = beam.map.surface();
    std::vector<glm::dvec3> points;
    if (surface.flat()) {
        for (const glm::dvec2 uv : beam.shape.corners)
            points.push_back(geometry::point_at(surface, uv));
    } else {
        for (const glm::dvec2 uv : beam.shape.outline)
            points.push_back(geometry::point_at(surface, uv));
    }
    return points;
}

/// Whether the wall lies between the whole pupil and every point.
bool passes_wall(const PortBeam& beam, const std::vector<glm::dvec3>& points) {
    const double wall = beam.booth_wall_back_m;
    const Pose& pose = beam.map.pose();
    const double nearest = pose.lens.z - beam.pupil_radius_m * std::hypot(pose.right.z, pose.up.z);
    if (nearest <= wall) return false;
    return std::ranges::all_of(points, [&](const glm::dvec3& p) { return p.z < wall; });
}

/// a + b c + d s, of the pupil's rim (c, s).
struct OnRim {
    double whole = 0.0, right = 0.0, up = 0.0;
};

/// Greatest value of top / bottom on the rim; bottom > 0 there. At the greatest value m the form
/// top - m bottom just touches 0: (top.whole - m bottom.whole)^2 equals the square sum of the rest.
double greatest_ratio(const OnRim& top, const OnRim& bottom) {
    const auto product = [](const OnRim& x, const OnRim& y) {
        return x.whole * y.whole - x.right * y.right - x.up * y.up;
    };
    const double a = product(bottom, bottom);
    const double b = product(top, bottom);
    const double c = product(top, top);
    return (b + std::sqrt(std::max(b * b - a * c, 0.0))) / a;
}

/// How far light reaches along a way in the wall, and where it does.
struct Reach {
    double far_m = -std::numeric_limits<double>::infinity();
    glm::dvec2 at{0.0};
};

/// Where the ray from a pupil point to p meets the wall.
glm::dvec2 in_wall(const PortBeam& beam, const glm::dvec3& p, glm::dvec2 pupil) {
    const Pose& pose = beam.map.pose();
    const glm::dvec3 q =
        pose.lens + beam.pupil_radius_m * (pupil.x * pose.right + pupil.y * pose.up);
    const glm::dvec3 at = q + ((q.z - beam.booth_wall_back_m) / (q.z - p.z)) * (p - q);
    return {at.x, at.y};
}

/// Of the cone of one picture point, along `way` (across, up).
Reach reach(const PortBeam& beam, const glm::dvec3& p, glm::dvec2 way) {
    const Pose& pose = beam.map.pose();
    const double wall = beam.booth_wall_back_m;
    const auto along = [&](const glm::dvec3& v) { return way.x * v.x + way.y * v.y; };
    // Measured from the lens, so that large coordinates cost no digits.
    const double to_p = along(p - pose.lens);
    const auto top_of = [&](const glm::dvec3& e) { return to_p * e.z + along(e) * (wall - p.z); };
    const double r = beam.pupil_radius_m;
    const OnRim top{to_p * (pose.lens.z - wall), r * top_of(pose.right), r * top_of(pose.up)};
    const OnRim bottom{pose.lens.z - p.z, r * pose.right.z, r * pose.up.z};
    const double most = greatest_ratio(top, bottom);
    // Where top - most bottom touches 0.
    const glm::dvec2 touch(top.right - most * bottom.right, top.up - most * bottom.up);
    const double length = glm::length(touch);
    const glm::dvec2 pupil = length > 0.0 ? touch / length : glm::dvec2(0.0);
    return {along(pose.lens) + most, in_wall(beam, p, pupil)};
}

Reach reach(const PortBeam& beam, const std::vector<glm::dvec3>& points, glm::dvec2 way) {
    Reach farthest;
    for (const glm::dvec3& p : points) {
        const Reach one = reach(beam, p, way);
        if (one.far_m > farthest.far_m) farthest = one;
    }
    return farthest;
}

}  // namespace

std::optional<geometry::Rectangle> port_light(const PortBeam& beam) {
    const auto points = deciding_points(beam);
    if (!passes_wall(beam, points)) return std::nullopt;
    return geometry::Rectangle{.left = -reach(beam, points, {-1.0, 0.0}).far_m,
                               .right = reach(beam, points, {1.0, 0.0}).far_m,
                               .bottom = -reach(beam, points, {0.0, -1.0}).far_m,
                               .top = reach(beam, points, {0.0, 1.0}).far_m};
}

std::vector<glm::dvec2> port_outline(const PortBeam& beam, int corners) {
    const auto points = deciding_points(beam);
    if (!passes_wall(beam, points)) return {};
    std::vector<glm::dvec2> outline;
    for (int i = 0; i < corners; ++i) {
        const double turn = 2.0 * base::kPi * i / corners;
        outline.push_back(reach(beam, points, {std::cos(turn), std::sin(turn)}).at);
    }
    return outline;
}

geometry::Rectangle port_rim(const room::Port& port) {
    return {.left = port.across_m - 0.5 * port.width_m,
            .right = port.across_m + 0.5 * port.width_m,
            .bottom = port.up_m - 0.5 * port.height_m,
            .top = port.up_m + 0.5 * port.height_m};
}

double port_margin(const room::Port& port, const geometry::Rectangle& light) {
    const geometry::Rectangle rim = port_rim(port);
    return std::min({light.left - rim.left, rim.right - light.right, light.bottom - rim.bottom,
                     rim.top - light.top});
}

}  // namespace rakeline::picture
