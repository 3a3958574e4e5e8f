// SPDX-License-Identifier: MIT
#include "drawing/line_parts.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {

double distance_to_segment(glm::dvec2 p, glm::dvec2 a, glm::dvec2 b) {
    const glm::dvec2 along = b - a;
    const double length2 = glm::dot(along, along);
    const double t = length2 > 0.0 ? std::clamp(glm::dot(p - a, along) / length2, 0.0, 1.0) : 0.0;
    return glm::length(p - (a + t * along));
}

double length_of(const std::vector<glm::dvec2>& line) {
    double length = 0.0;
    for (std::size_t i = 1; i < line.size(); ++i)
        length += glm::length(line[i] - line[i - 1]);
    return length;
}

std::array<std::vector<glm::dvec2>, 2> around_gap(const std::vector<glm::dvec2>& line,
                                                  double from,
                                                  double to) {
    std::array<std::vector<glm::dvec2>, 2> parts{{{line.front()}, {}}};
    double along = 0.0;
    for (std::size_t i = 1; i < line.size(); ++i) {
        const glm::dvec2 a = line[i - 1], b = line[i];
        const double length = glm::length(b - a);
        const auto at = [&](double s) { return a + ((s - along) / length) * (b - a); };
        const double end = along + length;
        if (end <= from) parts[0].push_back(b);
        if (along < from && end > from) parts[0].push_back(at(from));
        if (along <= to && end > to) parts[1].push_back(at(to));
        if (end > to) parts[1].push_back(b);
        along = end;
    }
    return parts;
}

std::vector<std::vector<glm::dvec2>> outside(const std::vector<glm::dvec2>& line,
                                             const geometry::Rectangle& box,
                                             double step_m) {
    std::vector<std::vector<glm::dvec2>> runs(1);
    for (std::size_t i = 1; i < line.size(); ++i) {
        const glm::dvec2 a = line[i - 1], b = line[i];
        const int steps = std::max(1, static_cast<int>(std::ceil(glm::length(b - a) / step_m)));
        for (int k = i == 1 ? 0 : 1; k <= steps; ++k) {
            const glm::dvec2 p = a + (static_cast<double>(k) / steps) * (b - a);
            if (p.x < box.left || p.x > box.right || p.y < box.bottom || p.y > box.top)
                runs.back().push_back(p);
            else if (!runs.back().empty())
                runs.emplace_back();
        }
    }
    return runs;
}

}  // namespace rakeline::drawing
