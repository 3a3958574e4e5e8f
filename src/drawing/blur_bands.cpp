// SPDX-License-Identifier: MIT
#include "drawing/blur_bands.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {
namespace {

using geometry::Rectangle;
using Points = std::vector<glm::dvec2>;

/// What is kept of one column of the opening: v from `low` to `high`.
struct Column {
    double u = 0.0;
    double low = 0.0;
    double high = 0.0;
    bool empty = true;
};

/// How far a surface point lies on the wanted side.
struct Depth {
    const picture::PictureMap& map;
    double distance_m = 0.0;
    double sign = 1.0;  ///< 1 behind, -1 before

    double at(double u, double v) const {
        const picture::Pose& pose = map.pose();
        const glm::dvec3 point = geometry::point_at(map.surface(), {u, v});
        return sign * (glm::dot(point - pose.lens, pose.axis) - distance_m);
    }
};

Column column_at(const Depth& depth, const Rectangle& opening, double u) {
    const double foot = depth.at(u, opening.bottom);
    const double head = depth.at(u, opening.top);
    Column column{u, opening.bottom, opening.top, foot < 0.0 && head < 0.0};
    if ((foot < 0.0) == (head < 0.0)) return column;
    const double v = opening.bottom + foot / (foot - head) * opening.height();
    (head < 0.0 ? column.high : column.low) = v;
    return column;
}

/// Between `in`, where the depth at v is not negative, and `out`, where it is: the last place of
/// the first kind, so that the column there is kept.
double last_kept(const Depth& depth, double v, double in, double out) {
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (in + out);
        (depth.at(middle, v) < 0.0 ? out : in) = middle;
    }
    return in;
}

/// Columns across the opening, among them those where the upper or lower edge leaves the band.
std::vector<double> column_places(const Depth& depth, const Rectangle& opening) {
    constexpr std::size_t kColumns = 64;
    std::vector<double> places;
    for (std::size_t i = 0; i <= kColumns; ++i)
        places.push_back(std::lerp(opening.left, opening.right, static_cast<double>(i) / kColumns));
    for (std::size_t i = 0; i < kColumns; ++i) {
        const double a = places[i], b = places[i + 1];
        for (const double v : {opening.bottom, opening.top}) {
            const bool a_out = depth.at(a, v) < 0.0, b_out = depth.at(b, v) < 0.0;
            if (a_out != b_out) places.push_back(last_kept(depth, v, a_out ? b : a, a_out ? a : b));
        }
    }
    std::sort(places.begin(), places.end());
    return places;
}

/// The polygon of columns that follow each other without a gap, counter-clockwise.
Points polygon_of(const std::vector<Column>& run) {
    Points points;
    for (const Column& c : run)
        points.emplace_back(c.u, c.low);
    for (auto c = run.rbegin(); c != run.rend(); ++c)
        points.emplace_back(c->u, c->high);
    return points;
}

bool on_border(const Rectangle& r, glm::dvec2 a, glm::dvec2 b) {
    return (a.x == b.x && (a.x == r.left || a.x == r.right)) ||
           (a.y == b.y && (a.y == r.bottom || a.y == r.top));
}

/// The runs of a polygon's edges that are not the opening's own.
void add_contours(const Points& polygon, const Rectangle& opening, std::vector<Points>& contours) {
    Points line;
    const auto end = [&] {
        if (line.size() > 1) contours.push_back(line);
        line.clear();
    };
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
        if (a == b) continue;
        if (on_border(opening, a, b)) {
            end();
            continue;
        }
        if (line.empty()) line.push_back(a);
        line.push_back(b);
    }
    end();
}

}  // namespace

BlurBand blur_band(const picture::PictureMap& map,
                   const Rectangle& opening,
                   double distance_m,
                   FocusSide side) {
    const Depth depth{map, distance_m, side == FocusSide::behind ? 1.0 : -1.0};
    BlurBand band;
    std::vector<Column> run;
    const auto end = [&] {
        if (run.size() > 1) {
            band.polygons.push_back(polygon_of(run));
            add_contours(band.polygons.back(), opening, band.contours);
        }
        run.clear();
    };
    for (const double u : column_places(depth, opening)) {
        const Column column = column_at(depth, opening, u);
        if (column.empty) {
            end();
        } else {
            run.push_back(column);
        }
    }
    end();
    return band;
}

std::vector<double> round_steps(double most) {
    RL_ASSERT(most > 0.0);
    const double decade = std::pow(10.0, std::floor(std::log10(most)) - 1.0);
    double step = decade;
    for (const double factor : {1.0, 2.0, 5.0, 10.0, 20.0}) {
        step = factor * decade;
        if (most / step <= 7.0) break;
    }
    std::vector<double> steps;
    for (int i = 1; i * step < most * (1.0 - 1e-9); ++i)
        steps.push_back(i * step);
    return steps;
}

}  // namespace rakeline::drawing
