// SPDX-License-Identifier: MIT
#include "drawing/contour_pen.hpp"

#include "drawing/line_parts.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {

void ContourPen::draw(const std::vector<glm::dvec2>& line, const ContourLook& look) {
    const double length = length_of(line);
    const double wide = pitch_m_ * (0.2 + 0.25 * static_cast<double>(look.text.size()));
    for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8}) {
        const auto halves = around_gap(line, share * length, share * length);
        if (length < 3.0 * wide || halves[1].size() < 2) break;
        const glm::dvec2 at = halves[1].front();
        if (taken(at, wide)) continue;
        const glm::dvec2 along = glm::normalize(halves[1][1] - at);
        const double gap = wide * std::abs(along.x) + 0.6 * pitch_m_ * std::abs(along.y);
        for (const auto& part : around_gap(line, share * length - gap, share * length + gap))
            stroke(part, look);
        label(at, wide, look);
        return;
    }
    stroke(line, look);
}

bool ContourPen::taken(glm::dvec2 at, double half_wide) const {
    for (const auto& line : kept_off_)
        for (std::size_t i = 0; i + 1 < line.size(); ++i)
            if (distance_to_segment(at, line[i], line[i + 1]) < 0.8 * pitch_m_) return true;
    return std::any_of(taken_.begin(), taken_.end(), [&](const Taken& t) {
        return std::abs(t.at.x - at.x) < t.half_wide + half_wide &&
               std::abs(t.at.y - at.y) < 1.2 * pitch_m_;
    });
}

void ContourPen::stroke(const std::vector<glm::dvec2>& points, const ContourLook& look) {
    if (points.size() < 2) return;
    drawing_.items.push_back(Line{.points = points,
                                  .weight = look.weight,
                                  .ink = look.ink,
                                  .closed = false,
                                  .dashed = look.dashed,
                                  .shows = look.shows});
}

void ContourPen::label(glm::dvec2 at, double half_wide, const ContourLook& look) {
    drawing_.items.push_back(Label{.at = at,
                                   .text = look.text,
                                   .anchor = Anchor::centre,
                                   .ink = look.ink,
                                   .shows = look.shows});
    taken_.push_back({at, half_wide});
}

}  // namespace rakeline::drawing
