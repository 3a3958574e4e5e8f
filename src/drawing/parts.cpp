// SPDX-License-Identifier: MIT
#include "drawing/parts.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakeline::drawing {
namespace {

struct PointsOf {
    std::vector<glm::dvec2> operator()(const Line& line) const { return line.points; }
    std::vector<glm::dvec2> operator()(const Fill& fill) const { return fill.points; }
    std::vector<glm::dvec2> operator()(const Shading& shading) const { return shading.points; }
    std::vector<glm::dvec2> operator()(const Label& label) const { return {label.at}; }
    std::vector<glm::dvec2> operator()(const Dimension& dimension) const {
        const Segment line = dimension_line(dimension);
        return {dimension.from, dimension.to, line.from, line.to};
    }
};

int first_unless(std::optional<int> choice, std::size_t count) {
    if (choice && *choice >= 0 && static_cast<std::size_t>(*choice) < count) return *choice;
    return count == 0 ? -1 : 0;
}

}  // namespace

Chosen chosen(const study::Study& study, const DrawingChoice& choice) {
    Chosen c;
    c.projector = first_unless(choice.projector, study.layout().projectors.size());
    c.format = first_unless(choice.format, study.layout().formats.size());
    if (c.format >= 0) c.opening = &study.picture.openings.at(static_cast<std::size_t>(c.format));
    if (c.format >= 0 && c.projector >= 0)
        c.picture = picture::find_picture(study.picture, c.projector, c.format);
    return c;
}

Ink verdict_ink(study::Verdict verdict) {
    switch (verdict) {
        case study::Verdict::holds:
            return Ink::holds;
        case study::Verdict::near:
            return Ink::near;
        case study::Verdict::missed:
            return Ink::missed;
        case study::Verdict::no_limit:
            break;
    }
    return Ink::line;
}

std::vector<study::Verdict> verdicts_by_index(const study::Figure* figure, std::size_t count) {
    std::vector<study::Verdict> verdicts(count, study::Verdict::no_limit);
    if (!figure) return verdicts;
    for (std::size_t i = 0; i < figure->values.size() && i < figure->verdicts.size(); ++i) {
        const auto index = static_cast<std::size_t>(figure->values[i].index);
        if (index < count) verdicts[index] = figure->verdicts[i];
    }
    return verdicts;
}

Line stroke(glm::dvec2 from, glm::dvec2 to, Weight weight, Ink ink, Shows what) {
    return {.points = {from, to},
            .weight = weight,
            .ink = ink,
            .closed = false,
            .dashed = false,
            .shows = what};
}

std::vector<glm::dvec2> disc(glm::dvec2 centre, double radius_m, int corners) {
    std::vector<glm::dvec2> points;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * base::kPi * i / corners;
        points.push_back(centre + radius_m * glm::dvec2(std::cos(angle), std::sin(angle)));
    }
    return points;
}

std::vector<glm::dvec2> box(glm::dvec2 centre,
                            glm::dvec2 along,
                            double half_along_m,
                            double half_across_m) {
    const glm::dvec2 a = along * half_along_m;
    const glm::dvec2 b = glm::dvec2(-along.y, along.x) * half_across_m;
    return {centre - a - b, centre + a - b, centre + a + b, centre - a + b};
}

std::vector<glm::dvec2> surface_line(const picture::ProjectedPicture& picture,
                                     glm::dvec2 from,
                                     glm::dvec2 to) {
    constexpr int kPieces = 24;
    std::vector<glm::dvec2> points;
    for (int i = 0; i <= kPieces; ++i) {
        const glm::dvec2 half = from + (to - from) * (static_cast<double>(i) / kPieces);
        const auto uv = picture.map.screen_from_gate(0.5 * half * picture.gate_size_m);
        if (uv) points.push_back(*uv);
    }
    return points;
}

std::vector<glm::dvec3> picture_line(const picture::ProjectedPicture& picture,
                                     glm::dvec2 from,
                                     glm::dvec2 to) {
    std::vector<glm::dvec3> points;
    for (const glm::dvec2& uv : surface_line(picture, from, to))
        points.push_back(geometry::point_at(picture.map.surface(), uv));
    return points;
}

bool is_raised(const study::Study& study, int row) {
    const int block = study.seats.rows.at(static_cast<std::size_t>(row)).block;
    return study.layout().seating.at(static_cast<std::size_t>(block)).raised;
}

bool is_raised(const study::Study& study, const room::Platform& platform) {
    if (!platform.block) return false;
    return study.layout().seating.at(static_cast<std::size_t>(*platform.block)).raised;
}

void set_bounds(Drawing& drawing, double margin_m) {
    constexpr double kFar = std::numeric_limits<double>::infinity();
    glm::dvec2 low(kFar), high(-kFar);
    for (const Item& item : drawing.items) {
        for (const glm::dvec2& p : std::visit(PointsOf{}, item)) {
            low = {std::min(low.x, p.x), std::min(low.y, p.y)};
            high = {std::max(high.x, p.x), std::max(high.y, p.y)};
        }
    }
    if (low.x > high.x) return;
    drawing.low = low - glm::dvec2(margin_m);
    drawing.high = high + glm::dvec2(margin_m);
}

}  // namespace rakeline::drawing
