// SPDX-License-Identifier: MIT
#include "picture/covering.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace rakeline::picture {
namespace {

constexpr int kSamples = 64;  ///< an edge of the opening is cut into

/// One edge of the opening, walked by t in 0 ... 1.
struct BorderEdge {
    glm::dvec2 from{0.0};
    glm::dvec2 to{0.0};
    glm::dvec2 at(double t) const { return from + t * (to - from); }
};

std::array<BorderEdge, 4> border(const geometry::Rectangle& r) {
    const glm::dvec2 a(r.left, r.bottom), b(r.right, r.bottom), c(r.right, r.top), d(r.left, r.top);
    return {BorderEdge{a, d}, BorderEdge{b, c}, BorderEdge{d, c}, BorderEdge{a, b}};
}

/// Outward in the gate and on the surface alike, in the order of PictureEdge.
glm::dvec2 outward(PictureEdge edge) {
    switch (edge) {
        case PictureEdge::left:
            return {-1.0, 0.0};
        case PictureEdge::right:
            return {1.0, 0.0};
        case PictureEdge::top:
            return {0.0, 1.0};
        case PictureEdge::bottom:
            return {0.0, -1.0};
    }
    return {0.0, 0.0};
}

constexpr std::array kEdges{PictureEdge::left, PictureEdge::right, PictureEdge::top,
                            PictureEdge::bottom};

/// A line that is straight in space is straight in the gate: every edge on a plane, and on a
/// cylinder those along the generator.
bool straight_in_gate(const PictureMap& map, const BorderEdge& edge) {
    return map.surface().flat() || edge.from.x == edge.to.x;
}

/// Greatest reach toward `side` in the gate of one edge of the opening. Of a straight edge its ends
/// tell all (whether they lie behind the lens too: depth runs evenly along it). Of an arc: best
/// sample, then a ternary search between its neighbours, over which the reach has one top.
std::optional<double> edge_reach(const PictureMap& map, const BorderEdge& edge, glm::dvec2 side) {
    const auto reach = [&](double t) -> std::optional<double> {
        const auto gate = map.gate_from_screen(edge.at(t));
        return gate ? std::optional(glm::dot(*gate, side)) : std::nullopt;
    };
    const int parts = straight_in_gate(map, edge) ? 1 : kSamples;
    double best = -std::numeric_limits<double>::infinity();
    int best_k = 0;
    for (int k = 0; k <= parts; ++k) {
        const auto r = reach(static_cast<double>(k) / parts);
        if (!r) return std::nullopt;
        if (*r > best) {
            best = *r;
            best_k = k;
        }
    }
    if (best_k == 0 || best_k == parts) return best;
    double low = static_cast<double>(best_k - 1) / kSamples;
    double high = static_cast<double>(best_k + 1) / kSamples;
    for (int i = 0; i < 40; ++i) {
        const double a = low + (high - low) / 3.0;
        const double b = high - (high - low) / 3.0;
        if (reach(a) < reach(b)) {
            low = a;
        } else {
            high = b;
        }
    }
    return std::max(best, reach(0.5 * (low + high)).value_or(best));
}

std::optional<double> opening_reach(const PictureMap& map,
                                    const Opening& opening,
                                    PictureEdge edge) {
    double most = -std::numeric_limits<double>::infinity();
    for (const BorderEdge& e : border(opening.uv)) {
        const auto reach = edge_reach(map, e, outward(edge));
        if (!reach) return std::nullopt;
        most = std::max(most, *reach);
    }
    return most;
}

double half_gate(glm::dvec2 gate_size_m, PictureEdge edge) {
    return 0.5 * std::abs(glm::dot(gate_size_m, outward(edge)));
}

/// How far outward from a point of the opening's edge the line of the picture's rim runs: secants
/// on the map, which is smooth and rises outward. A step off the surface is halved.
std::optional<double> rim_distance(const PictureMap& map,
                                   glm::dvec2 uv,
                                   PictureEdge edge,
                                   double half_m) {
    const glm::dvec2 side = outward(edge);
    const auto over = [&](double s) -> std::optional<double> {
        const auto gate = map.gate_from_screen(uv + s * side);
        return gate ? std::optional(glm::dot(*gate, side) - half_m) : std::nullopt;
    };
    auto f0 = over(0.0);
    if (!f0) return std::nullopt;
    double s0 = 0.0;
    double step = std::copysign(1e-3 * map.pose().image_distance_m, -*f0);
    for (int i = 0; i < 100; ++i) {
        const auto f1 = over(s0 + step);
        if (!f1) {
            step *= 0.5;
            continue;
        }
        if (*f1 == *f0) return s0 + step;
        const double next = -*f1 * step / (*f1 - *f0);
        s0 += step;
        f0 = f1;
        step = next;
        if (std::abs(step) < 1e-12 * (1.0 + std::abs(s0))) return s0 + step;
    }
    return std::nullopt;
}

std::optional<double> least_overfill(const PictureMap& map,
                                     const Opening& opening,
                                     PictureEdge edge,
                                     double half_m) {
    const BorderEdge line = border(opening.uv).at(static_cast<std::size_t>(edge));
    // On a plane the rim is straight, so its distance runs evenly from corner to corner.
    const int parts = map.surface().flat() ? 1 : kSamples;
    double least = std::numeric_limits<double>::infinity();
    for (int k = 0; k <= parts; ++k) {
        const auto s = rim_distance(map, line.at(static_cast<double>(k) / parts), edge, half_m);
        if (!s) return std::nullopt;
        least = std::min(least, *s);
    }
    return least;
}

std::optional<EdgeOverfill> edge_overfill(const PictureMap& map,
                                          glm::dvec2 gate_size_m,
                                          const Opening& opening) {
    std::array<double, 4> least{};
    for (const PictureEdge edge : kEdges) {
        const auto m = least_overfill(map, opening, edge, half_gate(gate_size_m, edge));
        if (!m) return std::nullopt;
        least.at(static_cast<std::size_t>(edge)) = *m;
    }
    return EdgeOverfill{
        .left_m = least[0], .right_m = least[1], .top_m = least[2], .bottom_m = least[3]};
}

}  // namespace

const char* edge_name(PictureEdge edge) {
    static constexpr std::array names{"left", "right", "top", "bottom"};
    return names.at(static_cast<std::size_t>(edge));
}

double EdgeOverfill::least_m() const {
    return std::min({left_m, right_m, top_m, bottom_m});
}

std::optional<Covering> covering(const PictureMap& map,
                                 glm::dvec2 gate_size_m,
                                 const Opening& opening) {
    std::array<double, 4> reach{};
    Covering out;
    out.enlargement = -std::numeric_limits<double>::infinity();
    for (const PictureEdge edge : kEdges) {
        const auto r = opening_reach(map, opening, edge);
        if (!r) return std::nullopt;
        reach.at(static_cast<std::size_t>(edge)) = *r;
        const double k = *r / half_gate(gate_size_m, edge);
        if (k > out.enlargement) {
            out.enlargement = k;
            out.decides = edge;
        }
    }
    out.reach = {.left = -reach[0], .right = reach[1], .bottom = -reach[3], .top = reach[2]};
    out.overfill = edge_overfill(map, gate_size_m, opening);
    return out;
}

std::optional<double> covering_focal_length(const PictureMap& map,
                                            glm::dvec2 gate_size_m,
                                            const Covering& covering,
                                            double throw_m) {
    const double b = map.pose().image_distance_m;
    const geometry::Rectangle& r = covering.reach;
    const std::array<double, 4> reach{-r.left, r.right, r.top, -r.bottom};
    double least = 0.0;
    double most = std::numeric_limits<double>::infinity();
    for (const PictureEdge edge : kEdges) {
        const double shift = glm::dot(map.pose().shift_m, outward(edge));
        const double space = half_gate(gate_size_m, edge) + shift;  // from the axis to this edge
        const double wanted = reach.at(static_cast<std::size_t>(edge)) + shift;
        if (wanted > 0.0) most = std::min(most, b * space / wanted);
        if (wanted < 0.0) least = std::max(least, b * space / wanted);
        if (wanted == 0.0 && space < 0.0) return std::nullopt;
    }
    if (!(most > 0.0) || least > most || std::isinf(most)) return std::nullopt;
    return most * throw_m / (throw_m + most);
}

MaskStops mask_stops(const room::Screen& screen, const room::Format& format) {
    if (screen.masking != room::MaskingMode::fixed) {
        const geometry::Rectangle uv = masked_opening(screen, format).uv;
        return {.left_m = -uv.left, .right_m = uv.right, .top_m = uv.top, .bottom_m = -uv.bottom};
    }
    const auto half_arc = geometry::half_arc_of_chord(screen_patch(screen), screen.width_m);
    RL_ASSERT(half_arc);
    const double half_height = 0.5 * screen.height_m;
    return {
        .left_m = *half_arc, .right_m = *half_arc, .top_m = half_height, .bottom_m = half_height};
}

}  // namespace rakeline::picture
