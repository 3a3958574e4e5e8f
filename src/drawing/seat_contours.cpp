// SPDX-License-Identifier: MIT
#include "drawing/seat_contours.hpp"

#include <cmath>

namespace rakeline::drawing {
namespace {

using Edge = std::pair<int, int>;  ///< points of the mesh, the lower index first

/// A row's seats that have a value, as points of the mesh, from house left.
std::vector<int> add_row(SeatMesh& mesh,
                         const study::Study& study,
                         const study::Figure& figure,
                         const room::Row& row) {
    std::vector<int> out;
    for (int i = row.first_seat; i < row.first_seat + row.seat_count; ++i) {
        const auto value = study::value_at(figure, i);
        if (!value) continue;
        const glm::dvec3& at = study.seats.seats[static_cast<std::size_t>(i)].floor;
        out.push_back(static_cast<int>(mesh.points.size()));
        mesh.points.emplace_back(at.x, at.z);
        mesh.values.push_back(*value);
    }
    return out;
}

double distance(const SeatMesh& mesh, int a, int b) {
    return glm::length(mesh.points[static_cast<std::size_t>(a)] -
                       mesh.points[static_cast<std::size_t>(b)]);
}

void add_triangle(SeatMesh& mesh, int a, int b, int c) {
    for (const auto& [from, to] : {Edge{a, b}, Edge{b, c}, Edge{c, a}})
        if (distance(mesh, from, to) > kMostBridged_m) return;
    mesh.triangles.push_back({a, b, c});
}

/// Whether the front row's next seat comes before the back row's, i and j being where both stand.
bool front_next(const SeatMesh& mesh, int front, int next_front, int back, int next_back) {
    constexpr double kAlike_m = 1e-9;
    const double by_front = distance(mesh, next_front, back);
    const double by_back = distance(mesh, front, next_back);
    if (std::abs(by_front - by_back) > kAlike_m) return by_front < by_back;
    const double across = mesh.points[static_cast<std::size_t>(front)].x +
                          mesh.points[static_cast<std::size_t>(next_back)].x;
    return across < 0.0;
}

void join_rows(SeatMesh& mesh, const std::vector<int>& front, const std::vector<int>& back) {
    std::size_t i = 0, j = 0;
    while (!front.empty() && !back.empty() && (i + 1 < front.size() || j + 1 < back.size())) {
        const bool by_front = j + 1 == back.size() ||
                              (i + 1 < front.size() &&
                               front_next(mesh, front[i], front[i + 1], back[j], back[j + 1]));
        if (by_front) {
            add_triangle(mesh, front[i], front[i + 1], back[j]);
            ++i;
        } else {
            add_triangle(mesh, front[i], back[j], back[j + 1]);
            ++j;
        }
    }
}

}  // namespace

SeatMesh seat_mesh(const study::Study& study, const study::Figure& figure, int block) {
    SeatMesh mesh;
    std::vector<int> before;
    for (const room::Row& row : study.seats.rows) {
        if (row.block != block) continue;
        std::vector<int> now = add_row(mesh, study, figure, row);
        join_rows(mesh, before, now);
        before = std::move(now);
    }
    return mesh;
}

}  // namespace rakeline::drawing
