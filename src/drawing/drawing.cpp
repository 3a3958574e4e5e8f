// SPDX-License-Identifier: MIT
#include "drawing/drawing.hpp"

#include "drawing/line_parts.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

double distance_to_path(glm::dvec2 p, const std::vector<glm::dvec2>& points, bool closed) {
    double least = glm::length(p - points.front());
    const std::size_t count = points.size();
    for (std::size_t i = 0; i + 1 < count + (closed ? 1 : 0); ++i)
        least = std::min(least, distance_to_segment(p, points[i], points[(i + 1) % count]));
    return least;
}

/// Whether a ray from p to the right crosses the outline an odd number of times.
bool inside(glm::dvec2 p, const std::vector<glm::dvec2>& polygon) {
    bool in = false;
    for (std::size_t i = 0, j = polygon.size() - 1; i < polygon.size(); j = i++) {
        const glm::dvec2 a = polygon[i], b = polygon[j];
        if ((a.y > p.y) == (b.y > p.y)) continue;
        if (p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
    }
    return in;
}

/// How well a click fits an item: its distance, and the size of what covers it (0 for lines).
struct Fit {
    double distance_m = 0.0;
    double area_m2 = 0.0;
};

double extent_area(const std::vector<glm::dvec2>& points) {
    glm::dvec2 low = points.front(), high = points.front();
    for (const glm::dvec2& p : points) {
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    return (high.x - low.x) * (high.y - low.y);
}

struct FitOf {
    glm::dvec2 point;
    double reach_m;

    std::optional<Fit> near(double distance_m) const {
        if (distance_m > reach_m) return std::nullopt;
        return Fit{distance_m, 0.0};
    }
    std::optional<Fit> operator()(const Line& line) const {
        if (line.points.empty()) return std::nullopt;
        return near(distance_to_path(point, line.points, line.closed));
    }
    std::optional<Fit> operator()(const Fill& fill) const {
        if (fill.points.size() < 3) return std::nullopt;
        const double area_m2 = extent_area(fill.points);
        if (inside(point, fill.points)) return Fit{0.0, area_m2};
        const double distance_m = distance_to_path(point, fill.points, true);
        if (distance_m > reach_m) return std::nullopt;
        return Fit{distance_m, area_m2};
    }
    std::optional<Fit> operator()(const Shading& shading) const {
        for (const auto& [a, b, c] : shading.triangles) {
            const std::vector<glm::dvec2> triangle{
                shading.points[static_cast<std::size_t>(a)],
                shading.points[static_cast<std::size_t>(b)],
                shading.points[static_cast<std::size_t>(c)],
            };
            if (inside(point, triangle)) return Fit{0.0, extent_area(shading.points)};
        }
        return std::nullopt;
    }
    std::optional<Fit> operator()(const Label& label) const {
        return near(glm::length(point - label.at));
    }
    std::optional<Fit> operator()(const Dimension& dimension) const {
        const Segment line = dimension_line(dimension);
        return near(distance_to_segment(point, line.from, line.to));
    }
};

/// A fill larger than this covers other things and loses to anything within reach.
constexpr double kSmallFill_m2 = 1.0;

bool better(const Fit& a, const Fit& b) {
    const bool a_covers = a.area_m2 > kSmallFill_m2;
    const bool b_covers = b.area_m2 > kSmallFill_m2;
    if (a_covers != b_covers) return b_covers;
    return a.distance_m <= b.distance_m;
}

}  // namespace

std::string dimension_text(const Dimension& dimension, base::UnitSystem units) {
    return dimension.prefix + base::quantity_text(length_m(dimension), dimension.unit, units,
                                                  dimension.extra_decimals);
}

double length_m(const Dimension& dimension) {
    return dimension.length_m.value_or(glm::length(dimension.to - dimension.from));
}

Segment dimension_line(const Dimension& dimension) {
    const glm::dvec2 along = dimension.to - dimension.from;
    const double length = glm::length(along);
    if (length == 0.0) return {dimension.from, dimension.to};
    const glm::dvec2 off = glm::dvec2(-along.y, along.x) * (dimension.offset_m / length);
    return {dimension.from + off, dimension.to + off};
}

Shows shown_at(const Drawing& drawing, glm::dvec2 point, double reach_m) {
    Shows found;
    std::optional<Fit> best;
    for (const Item& item : drawing.items) {
        const Shows shows = std::visit([](const auto& x) { return x.shows; }, item);
        if (shows.kind == Shows::Kind::nothing) continue;
        const auto fit = std::visit(FitOf{point, reach_m}, item);
        if (!fit || (best && !better(*fit, *best))) continue;
        best = fit;
        found = shows;
    }
    return found;
}

}  // namespace rakeline::drawing
