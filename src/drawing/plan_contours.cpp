// SPDX-License-Identifier: MIT
#include "drawing/plan_contours.hpp"

#include "base/number_text.hpp"
#include "drawing/line_parts.hpp"
#include "drawing/parts.hpp"
#include "drawing/seat_contours.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace rakeline::drawing {
namespace {

/// One value to draw the lines of.
struct Level {
    double si = 0.0;
    std::string text;
    bool limit = false;
};

struct BlockMesh {
    SeatMesh mesh;
    bool raised = false;
};

std::vector<BlockMesh> meshes_of(const study::Study& study, const DrawingChoice& choice) {
    std::vector<BlockMesh> out;
    const auto& blocks = study.layout().seating;
    for (std::size_t b = 0; b < blocks.size(); ++b) {
        if (choice.raised && *choice.raised != blocks[b].raised) continue;
        out.push_back(
            {seat_mesh(study, *choice.seat_figure, static_cast<int>(b)), blocks[b].raised});
    }
    return out;
}

const char* scope_words(room::LimitScope scope) {
    switch (scope) {
        case room::LimitScope::first_row:
            return ", first row";
        case room::LimitScope::last_row:
            return ", last row";
        case room::LimitScope::reference_seat:
            return ", reference seat";
        case room::LimitScope::every:
        case room::LimitScope::screen_channels:
            break;
    }
    return "";
}

std::string with_unit(const std::string& number, const std::string& unit) {
    return unit.empty() || unit == "°" ? number + unit : number + " " + unit;
}

/// "30°", "0.5 %", with as many decimals as the step between levels needs.
std::string level_text(double shown, double step, const std::string& unit) {
    const int needed = static_cast<int>(std::ceil(-std::log10(step) - 1e-9));
    return with_unit(base::fixed_text(shown, std::max(needed, 0)), unit);
}

class Levels {
public:
    Levels(const study::Study& study, const DrawingChoice& choice)
        : study_(study),
          figure_(*choice.seat_figure),
          scale_(base::shown_scale(figure_.definition->unit, choice.units)) {}

    std::vector<Level> between(double least, double most) const {
        std::vector<Level> out = limits(least, most);
        const auto rounds = round_levels(shown(least), shown(most));
        const double step = rounds.size() > 1 ? rounds[1] - rounds[0] : std::abs(shown(most));
        const std::size_t limit_count = out.size();
        for (const double level : rounds) {
            const bool is_limit =
                std::any_of(out.begin(), out.begin() + static_cast<long>(limit_count),
                            [&](const Level& l) { return std::abs(shown(l.si) - level) < 1e-6; });
            if (!is_limit)
                out.push_back({(level - scale_.offset) / scale_.factor,
                               level_text(level, step, scale_.unit), false});
        }
        return out;
    }

private:
    double shown(double si) const { return si * scale_.factor + scale_.offset; }

    std::vector<Level> limits(double least, double most) const {
        std::vector<Level> out;
        for (const int index : figure_.limits) {
            const room::Limit& limit =
                study_.brief->limits.limits.at(static_cast<std::size_t>(index));
            for (const auto& bound : {limit.least, limit.most}) {
                if (!bound || *bound <= least || *bound > most) continue;
                // To a millionth, without zeros at the end: "limit 15°".
                const double round = std::round(shown(*bound) * 1e6) / 1e6;
                out.push_back({*bound,
                               "limit " + with_unit(base::plain_text(round), scale_.unit) +
                                   scope_words(limit.scope),
                               true});
            }
        }
        return out;
    }

    const study::Study& study_;
    const study::Figure& figure_;
    base::ShownScale scale_;
};

/// Puts lines on the page, each number where no other stands.
class ContourPen {
public:
    ContourPen(const room::Hall& hall, Drawing& drawing)
        : pitch_m_(0.02 * std::max(hall.width_m, hall.length_m)), drawing_(drawing) {}

    void draw(const std::vector<glm::dvec2>& line, const Level& level, bool dashed) {
        const double length = length_of(line);
        const double wide = pitch_m_ * (0.2 + 0.25 * static_cast<double>(level.text.size()));
        for (const double share : {0.5, 0.35, 0.65, 0.2, 0.8}) {
            const auto halves = around_gap(line, share * length, share * length);
            if (length < 3.0 * wide || halves[1].size() < 2) break;
            const glm::dvec2 at = halves[1].front();
            if (taken(at, wide)) continue;
            const glm::dvec2 along = glm::normalize(halves[1][1] - at);
            const double gap = wide * std::abs(along.x) + 0.6 * pitch_m_ * std::abs(along.y);
            for (const auto& part : around_gap(line, share * length - gap, share * length + gap))
                stroke(part, level, dashed);
            label(at, wide, level);
            return;
        }
        stroke(line, level, dashed);
    }

private:
    struct Taken {
        glm::dvec2 at{0.0};
        double half_wide = 0.0;
    };

    bool taken(glm::dvec2 at, double half_wide) const {
        return std::any_of(taken_.begin(), taken_.end(), [&](const Taken& t) {
            return std::abs(t.at.x - at.x) < t.half_wide + half_wide &&
                   std::abs(t.at.y - at.y) < 1.2 * pitch_m_;
        });
    }

    void stroke(const std::vector<glm::dvec2>& points, const Level& level, bool dashed) {
        if (points.size() < 2) return;
        drawing_.items.push_back(Line{.points = points,
                                      .weight = level.limit ? Weight::cut : Weight::seen,
                                      .ink = level.limit ? Ink::missed : Ink::line,
                                      .closed = false,
                                      .dashed = dashed,
                                      .shows = {}});
    }

    void label(glm::dvec2 at, double half_wide, const Level& level) {
        drawing_.items.push_back(Label{.at = at,
                                       .text = level.text,
                                       .anchor = Anchor::centre,
                                       .ink = level.limit ? Ink::missed : Ink::line,
                                       .shows = {}});
        taken_.push_back({at, half_wide});
    }

    double pitch_m_;
    Drawing& drawing_;
    std::vector<Taken> taken_;
};

}  // namespace

bool wants_contours(const DrawingChoice& choice) {
    return choice.contours && choice.seat_figure && choice.seat_figure->definition &&
           choice.seat_figure->definition->axis() == study::Axis::seat;
}

void add_plan_contours(const study::Study& study, const DrawingChoice& choice, Drawing& drawing) {
    if (!wants_contours(choice)) return;
    const auto meshes = meshes_of(study, choice);
    std::vector<double> values;
    for (const BlockMesh& block : meshes)
        values.insert(values.end(), block.mesh.values.begin(), block.mesh.values.end());
    if (values.empty()) return;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    ContourPen pen(study.layout().hall, drawing);
    for (const Level& level : Levels(study, choice).between(*least, *most))
        for (const BlockMesh& block : meshes)
            for (const auto& line : contours(block.mesh, level.si))
                pen.draw(line, level, block.raised);
}

}  // namespace rakeline::drawing
