// SPDX-License-Identifier: MIT
#include "drawing/seat_contours.hpp"

#include <algorithm>
#include <cmath>
#include <map>

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

/// The pieces of one contour, and where they meet.
class Pieces {
public:
    Pieces(const SeatMesh& mesh, double level) : mesh_(mesh), level_(level) {
        for (const auto& [a, b, c] : mesh.triangles) {
            std::vector<Edge> crossed;
            for (const auto& [from, to] : {Edge{a, b}, Edge{b, c}, Edge{c, a}})
                if (above(from) != above(to)) crossed.push_back(std::minmax(from, to));
            if (crossed.size() == 2) add(crossed[0], crossed[1]);
        }
    }

    std::vector<std::vector<glm::dvec2>> lines() {
        std::vector<std::vector<glm::dvec2>> out;
        for (const bool open : {true, false})  // open lines from their ends, then rings
            for (const auto& [edge, pieces] : at_)
                if (!open || pieces.size() == 1) put_line(edge, out);
        return out;
    }

private:
    bool above(int point) const { return mesh_.values[static_cast<std::size_t>(point)] >= level_; }

    void add(const Edge& a, const Edge& b) {
        at_[a].push_back(pieces_.size());
        at_[b].push_back(pieces_.size());
        pieces_.emplace_back(a, b);
    }

    glm::dvec2 crossing(const Edge& edge) const {
        const auto a = static_cast<std::size_t>(edge.first);
        const auto b = static_cast<std::size_t>(edge.second);
        const double share = (level_ - mesh_.values[a]) / (mesh_.values[b] - mesh_.values[a]);
        return mesh_.points[a] + share * (mesh_.points[b] - mesh_.points[a]);
    }

    void put_line(Edge at, std::vector<std::vector<glm::dvec2>>& out) {
        std::vector<glm::dvec2> line{crossing(at)};
        for (bool more = true; more;) {
            more = false;
            for (const std::size_t i : at_[at]) {
                if (used_.contains(i)) continue;
                used_[i] = true;
                at = pieces_[i].first == at ? pieces_[i].second : pieces_[i].first;
                line.push_back(crossing(at));
                more = true;
                break;
            }
        }
        if (line.size() > 1) out.push_back(std::move(line));
    }

    const SeatMesh& mesh_;
    double level_;
    std::vector<std::pair<Edge, Edge>> pieces_;
    std::map<Edge, std::vector<std::size_t>> at_;
    std::map<std::size_t, bool> used_;
};

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

std::vector<std::vector<glm::dvec2>> contours(const SeatMesh& mesh, double level) {
    return Pieces(mesh, level).lines();
}

std::vector<double> round_levels(double least, double most) {
    constexpr double kMost = 8.0;
    if (!(most > least)) return {};
    const double wanted = (most - least) / kMost;
    const double power = std::pow(10.0, std::floor(std::log10(wanted)));
    double step = 10.0 * power;
    for (const double times : {5.0, 2.0, 1.0})
        if (times * power >= wanted * (1.0 - 1e-12)) step = times * power;
    std::vector<double> out;
    for (double n = std::ceil(least / step); n * step < most; n += 1.0)
        if (n * step > least) out.push_back(n * step);
    return out;
}

}  // namespace rakeline::drawing
