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

/// How far the cone of one picture point reaches along `way` (across, up) in the wall.
double reach(const PortBeam& beam, const glm::dvec3& p, glm::dvec2 way) {
    const Pose& pose = beam.map.pose();
    const double wall = beam.booth_wall_back_m;
    const auto along = [&](const glm::dvec3& v) { return way.x * v.x + way.y * v.y; };
    // Measured from the lens, so that large coordinates cost no digits.
    const double to_p = along(p - pose.lens);
    const auto top = [&](const glm::dvec3& e) { return to_p * e.z + along(e) * (wall - p.z); };
    const double r = beam.pupil_radius_m;
    const OnRim ratio_top{to_p * (pose.lens.z - wall), r * top(pose.right), r * top(pose.up)};
    const OnRim ratio_bottom{pose.lens.z - p.z, r * pose.right.z, r * pose.up.z};
    return along(pose.lens) + greatest_ratio(ratio_top, ratio_bottom);
}

double reach(const PortBeam& beam, const std::vector<glm::dvec3>& points, glm::dvec2 way) {
    double farthest = -std::numeric_limits<double>::infinity();
    for (const glm::dvec3& p : points)
        farthest = std::max(farthest, reach(beam, p, way));
    return farthest;
}

}  // namespace

std::optional<geometry::Rectangle> port_light(const PortBeam& beam) {
    const auto points = deciding_points(beam);
    if (!passes_wall(beam, points)) return std::nullopt;
    return geometry::Rectangle{.left = -reach(beam, points, {-1.0, 0.0}),
                               .right = reach(beam, points, {1.0, 0.0}),
                               .bottom = -reach(beam, points, {0.0, -1.0}),
                               .top = reach(beam, points, {0.0, 1.0})};
}

std::vector<glm::dvec2> port_outline(const PortBeam& beam, int sides) {
    const auto points = deciding_points(beam);
    if (!passes_wall(beam, points)) return {};
    const double step = 2.0 * base::kPi / sides;
    const auto way = [&](int i) { return glm::dvec2(std::cos(i * step), std::sin(i * step)); };
    std::vector<glm::dvec2> outline;
    for (int i = 0; i < sides; ++i) {
        // Where the tangents square to two neighbouring ways meet.
        const double here = reach(beam, points, way(i));
        const double next = reach(beam, points, way(i + 1));
        const glm::dvec2 a = way(i), b = way(i + 1);
        const double turn = a.x * b.y - a.y * b.x;
        outline.emplace_back((here * b.y - next * a.y) / turn, (next * a.x - here * b.x) / turn);
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
