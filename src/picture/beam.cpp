// SPDX-License-Identifier: MIT
#include "picture/beam.hpp"

#include <array>
#include <cmath>
#include <vector>

namespace rakeline::picture {
namespace {

using Polygon = std::vector<glm::dvec3>;

/// Twice the plan area below which a face counts as upright: a strip less than a micrometre wide,
/// over which the height of the face would be lost in rounding.
constexpr double kUprightArea_m2 = 1e-6;

/// normal . p + offset >= 0.
struct HalfSpace {
    glm::dvec3 normal{0.0};
    double offset = 0.0;

    double at(const glm::dvec3& p) const { return glm::dot(normal, p) + offset; }
};

void keep_inside(Polygon& polygon, const HalfSpace& side) {
    Polygon out;
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

/// One side of the beam.
struct Face {
    HalfSpace inside;             ///< toward the beam's middle
    std::vector<HalfSpace> plan;  ///< upright walls over the face's outline
};

struct Beam {
    glm::dvec3 lens{0.0};
    std::vector<Face> lower;       ///< the beam lies over these
    std::vector<HalfSpace> upper;  ///< and under these
};

/// Upright walls around a convex outline; none if it is a mere line in plan. Convex it is: every
/// point of the rim turns its front to the lens, so the lens lies inside every tangent.
std::vector<HalfSpace> plan_walls(const Polygon& outline) {
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
std::optional<Polygon> face_outline(const PictureMap& map, glm::dvec2 from, glm::dvec2 to) {
    constexpr int kCurvedSegments = 24;
    const int segments = map.surface().flat() ? 1 : kCurvedSegments;
    Polygon outline{map.pose().lens};
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

std::optional<Beam> beam_of(const BeamInput& in) {
    const glm::dvec2 h = 0.5 * in.gate_size_m;
    const std::array<glm::dvec2, 4> gate{glm::dvec2(-h.x, -h.y), glm::dvec2(h.x, -h.y),
                                         glm::dvec2(h.x, h.y), glm::dvec2(-h.x, h.y)};
    Beam beam{.lens = in.map.pose().lens, .lower = {}, .upper = {}};
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec2 next = gate[(i + 1) % 4];
        const auto outline = face_outline(in.map, gate[i], next);
        if (!outline) return std::nullopt;
        const HalfSpace inside = inner_side(in.map, gate[i], next);
        std::vector<HalfSpace> walls = plan_walls(*outline);
        if (walls.empty()) continue;  // upright: its neighbours share its two outer rays
        if (inside.normal.y > 0.0) {
            beam.lower.push_back({inside, std::move(walls)});
        } else {
            beam.upper.push_back(inside);
        }
    }
    return beam;
}

/// The part of a floor that lies in plan under one lower face, and not above the beam.
Polygon floor_under(const Face& face, const Beam& beam, Polygon floor) {
    for (const HalfSpace& wall : face.plan) {
        keep_inside(floor, wall);
        if (floor.empty()) return floor;
    }
    for (const HalfSpace& top : beam.upper)
        keep_inside(floor, top);
    return floor;
}

void take_least(const Beam& beam, const Polygon& floor, std::optional<BeamClearance>& least) {
    for (const Face& face : beam.lower) {
        for (const glm::dvec3& p : floor_under(face, beam, floor)) {
            // Height of the face over p: how far p has to rise to meet it.
            const double height = -face.inside.at(p) / face.inside.normal.y;
            if (!least || height < least->height_m) least = BeamClearance{height, p};
        }
    }
}

}  // namespace

std::optional<BeamClearance> beam_clearance(const BeamInput& in,
                                            std::span<const room::Platform> platforms) {
    const auto beam = beam_of(in);
    if (!beam) return std::nullopt;
    const HalfSpace hall{{0.0, 0.0, -1.0}, in.booth_wall_back_m};
    std::optional<BeamClearance> least;
    for (const room::Platform& platform : platforms) {
        const auto& c = platform.corners;
        for (Polygon floor : {Polygon{c[0], c[1], c[2]}, Polygon{c[0], c[2], c[3]}}) {
            keep_inside(floor, hall);
            take_least(*beam, floor, least);
        }
    }
    return least;
}

std::optional<glm::dvec3> port_point(const Pose& pose, double throw_m, double booth_wall_back_m) {
    if (pose.axis.z == 0.0) return std::nullopt;
    const double t = (booth_wall_back_m - pose.lens.z) / pose.axis.z;
    if (t < 0.0 || t > throw_m) return std::nullopt;
    return pose.lens + t * pose.axis;
}

}  // namespace rakeline::picture
