// SPDX-License-Identifier: MIT
#include "geometry/inset.hpp"

#include "base/assert.hpp"
#include "geometry/polygon.hpp"

#include <cmath>
#include <optional>

namespace rakeline::geometry {
namespace {

struct Side {
    glm::dvec2 from{0.0};
    glm::dvec2 to{0.0};
    glm::dvec2 along{0.0};   ///< unit
    glm::dvec2 inward{0.0};  ///< unit, to the left of `along`
};

double cross(glm::dvec2 a, glm::dvec2 b) {
    return a.x * b.y - a.y * b.x;
}

std::vector<Side> sides_of(std::span<const glm::dvec2> polygon) {
    std::vector<Side> sides;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 from = polygon[i];
        const glm::dvec2 to = polygon[(i + 1) % polygon.size()];
        const double length = glm::length(to - from);
        if (length == 0.0) continue;
        const glm::dvec2 along = (to - from) / length;
        sides.push_back({from, to, along, {-along.y, along.x}});
    }
    return sides;
}

/// Where two consecutive sides meet after both moved inward.
glm::dvec2 corner(const Side& a, const Side& b, double distance) {
    const glm::dvec2 on_a = a.to + distance * a.inward;
    const glm::dvec2 on_b = b.from + distance * b.inward;
    const double turn = cross(a.along, b.along);
    if (std::abs(turn) < 1e-9) return 0.5 * (on_a + on_b);  // one line on: no meeting to solve
    return on_a + a.along * (cross(on_b - on_a, b.along) / turn);
}

/// Corner i stands at the beginning of side i.
std::vector<glm::dvec2> corners_of(const std::vector<Side>& sides, double distance) {
    std::vector<glm::dvec2> corners;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        corners.push_back(corner(sides[(i + sides.size() - 1) % sides.size()], sides[i], distance));
    }
    return corners;
}

/// Of the sides that have turned round, the one that shrank to nothing first.
std::optional<std::size_t> first_collapsed(const std::vector<Side>& sides, double distance) {
    const auto before = corners_of(sides, 0.0);
    const auto after = corners_of(sides, distance);
    std::optional<std::size_t> first;
    double earliest = 1.0;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const std::size_t next = (i + 1) % sides.size();
        const double was = glm::dot(before[next] - before[i], sides[i].along);
        const double is = glm::dot(after[next] - after[i], sides[i].along);
        if (is >= 0.0) continue;
        const double when = was / (was - is);  // lengths change evenly with the distance
        if (!first || when < earliest) {
            first = i;
            earliest = when;
        }
    }
    return first;
}

}  // namespace

std::vector<glm::dvec2> inset(std::span<const glm::dvec2> polygon, double distance) {
    RL_ASSERT(distance >= 0.0);
    if (distance == 0.0) return {polygon.begin(), polygon.end()};
    std::vector<Side> sides = sides_of(polygon);
    while (sides.size() >= 3) {
        const auto gone = first_collapsed(sides, distance);
        if (!gone) break;
        sides.erase(sides.begin() + static_cast<std::ptrdiff_t>(*gone));
    }
    if (sides.size() < 3) return {};
    auto corners = corners_of(sides, distance);
    if (!(signed_area(corners) > 0.0)) return {};
    return corners;
}

}  // namespace rakeline::geometry
