// SPDX-License-Identifier: MIT
#include "drawing/value_contours.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace rakeline::drawing {
namespace {

using Edge = std::pair<int, int>;  ///< points of the mesh, the lower index first

/// The pieces of one contour, and where they meet.
class Pieces {
public:
    Pieces(const ValueMesh& mesh, double level) : mesh_(mesh), level_(level) {
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

    const ValueMesh& mesh_;
    double level_;
    std::vector<std::pair<Edge, Edge>> pieces_;
    std::map<Edge, std::vector<std::size_t>> at_;
    std::map<std::size_t, bool> used_;
};

}  // namespace

std::vector<std::vector<glm::dvec2>> contours(const ValueMesh& mesh, double level) {
    return Pieces(mesh, level).lines();
}

std::vector<double> round_levels(double least, double most, double count) {
    if (!(most > least)) return {};
    const double wanted = (most - least) / count;
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
