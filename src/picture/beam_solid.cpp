// SPDX-License-Identifier: MIT
#include "picture/beam_solid.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::picture {
namespace {

/// Twice the plan area below which a face counts as upright: a strip less than a micrometre wide,
/// over which the height of the face would be lost in rounding.
constexpr double kUprightArea_m2 = 1e-6;

/// Upright walls around a convex outline; none if it is a mere line in plan. Convex it is: every
/// point of the rim turns its front to the lens, so the lens lies inside every tangent.
std::vector<HalfSpace> plan_walls(const SpacePolygon& outline) {
    double twice_area = 0.0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec3 a = outline[i] - outline[0];
        const glm::dvec3 b = outline[(i + 1) % outline.size()] - outline[0];
        twice_area += a.z * b.x - a.x * b.z;
    }
    if (std::abs(twice_area) < kUprightArea_m2) return {};
    const double turn = std::copysign(1.0, twice_area);
    std::vector<HalfSpace> walls;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec3 a = outline[i];
        const glm::dvec3 edge = outline[(i + 1) % outline.size()] - a;
        const glm::dvec3 inward = turn * glm::dvec3(edge.z, 0.0, -edge.x);
        walls.push_back({inward, -glm::dot(inward, a)});
    }
    return walls;
}

/// The lens and the rim's points along one edge of the gate. A plane keeps the edge straight, so
/// its two ends are enough.
std::optional<SpacePolygon> face_outline(const PictureMap& map, glm::dvec2 from, glm::dvec2 to) {
    constexpr int kCurvedSegments = 24;
    const int segments = map.surface().flat() ? 1 : kCurvedSegments;
    SpacePolygon outline{map.pose().lens};
    for (int k = 0; k <= segments; ++k) {
        const auto uv =
            map.screen_from_gate(from + (static_cast<double>(k) / segments) * (to - from));
        if (!uv) return std::nullopt;
        outline.push_back(geometry::point_at(map.surface(), *uv));
    }
    return outline;
}

HalfSpace inner_side(const PictureMap& map, glm::dvec2 from, glm::dvec2 to) {
    glm::dvec3 normal = glm::normalize(glm::cross(map.ray(from).direction, map.ray(to).direction));
    if (glm::dot(normal, map.ray({0.0, 0.0}).direction) < 0.0) normal = -normal;
    return {normal, -glm::dot(normal, map.pose().lens)};
}

}  // namespace

void keep_inside(SpacePolygon& polygon, const HalfSpace& side) {
    // Most polygons stand on one side whole; only the others are worth new memory.
    const auto inside = [&](const glm::dvec3& p) { return side.at(p) >= 0.0; };
    if (std::all_of(polygon.begin(), polygon.end(), inside)) return;
    if (std::none_of(polygon.begin(), polygon.end(), inside)) return polygon.clear();
    SpacePolygon out;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec3 a = polygon[i];
        const glm::dvec3 b = polygon[(i + 1) % polygon.size()];
        const double da = side.at(a);
        const double db = side.at(b);
        if (da >= 0.0) out.push_back(a);
        if ((da < 0.0) != (db < 0.0)) out.push_back(a + (da / (da - db)) * (b - a));
    }
    polygon = std::move(out);
}

std::optional<BeamSolid> beam_solid(const PictureMap& map, glm::dvec2 gate_size_m) {
    const glm::dvec2 h = 0.5 * gate_size_m;
    const std::array<glm::dvec2, 4> gate{glm::dvec2(-h.x, -h.y), glm::dvec2(h.x, -h.y),
                                         glm::dvec2(h.x, h.y), glm::dvec2(-h.x, h.y)};
    BeamSolid beam;
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 next = gate[(i + 1) % 4];
        const auto outline = face_outline(map, gate[i], next);
        if (!outline) return std::nullopt;
        const HalfSpace inside = inner_side(map, gate[i], next);
        std::vector<HalfSpace> walls = plan_walls(*outline);
        if (walls.empty()) continue;
        auto& faces = inside.normal.y > 0.0 ? beam.lower : beam.upper;
        faces.push_back({inside, std::move(walls)});
    }
    return beam;
}

SpacePolygon plan_overlap(const BeamFace& face, SpacePolygon polygon) {
    for (const HalfSpace& wall : face.plan) {
        keep_inside(polygon, wall);
        if (polygon.empty()) break;
    }
    return polygon;
}

}  // namespace rakeline::picture
