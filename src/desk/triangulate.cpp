// SPDX-License-Identifier: MIT
#include "desk/triangulate.hpp"

#include <numeric>

namespace rakeline::desk {
namespace {

double cross(glm::dvec2 o, glm::dvec2 a, glm::dvec2 b) {
    return (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x);
}

double doubled_area(std::span<const glm::dvec2> p) {
    double sum = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const glm::dvec2 a = p[i], b = p[(i + 1) % p.size()];
        sum += a.x * b.y - b.x * a.y;
    }
    return sum;
}

bool holds(glm::dvec2 a, glm::dvec2 b, glm::dvec2 c, glm::dvec2 point, double turn) {
    return cross(a, b, point) * turn >= 0.0 && cross(b, c, point) * turn >= 0.0 &&
           cross(c, a, point) * turn >= 0.0;
}

/// Whether the corner at `i` of the remaining outline can be cut off.
bool is_ear(std::span<const glm::dvec2> p,
            const std::vector<std::size_t>& rest,
            std::size_t i,
            double turn) {
    const std::size_t n = rest.size();
    const std::size_t before = rest[(i + n - 1) % n], after = rest[(i + 1) % n];
    if (cross(p[before], p[rest[i]], p[after]) * turn < 0.0) return false;
    for (const std::size_t other : rest) {
        if (other == before || other == rest[i] || other == after) continue;
        if (p[other] == p[before] || p[other] == p[rest[i]] || p[other] == p[after]) continue;
        if (holds(p[before], p[rest[i]], p[after], p[other], turn)) return false;
    }
    return true;
}

}  // namespace

std::vector<std::array<std::size_t, 3>> triangulate(std::span<const glm::dvec2> polygon) {
    std::vector<std::array<std::size_t, 3>> triangles;
    std::vector<std::size_t> rest(polygon.size());
    std::iota(rest.begin(), rest.end(), std::size_t{0});
    const double turn = doubled_area(polygon) < 0.0 ? -1.0 : 1.0;
    std::size_t tried = 0;
    for (std::size_t i = 0; rest.size() > 2 && tried < rest.size();) {
        const std::size_t n = rest.size();
        i %= n;
        if (!is_ear(polygon, rest, i, turn)) {
            ++i;
            ++tried;
            continue;
        }
        triangles.push_back({rest[(i + n - 1) % n], rest[i], rest[(i + 1) % n]});
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        tried = 0;
    }
    return triangles;
}

}  // namespace rakeline::desk
