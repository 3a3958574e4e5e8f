// SPDX-License-Identifier: MIT
#include "drawing/plan_contours.hpp"

#include "base/number_text.hpp"
#include "drawing/contour_pen.hpp"
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

ContourLook look_of(const Level& level, bool dashed) {
    return {.text = level.text,
            .weight = level.limit ? Weight::cut : Weight::seen,
            .ink = level.limit ? Ink::missed : Ink::line,
            .dashed = dashed};
}

/// Of lettering over the plan.
double pitch_of(const room::Hall& hall) {
    return 0.02 * std::max(hall.width_m, hall.length_m);
}

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
    ContourPen pen(pitch_of(study.layout().hall), drawing);
    for (const Level& level : Levels(study, choice).between(*least, *most))
        for (const BlockMesh& block : meshes)
            for (const auto& line : contours(block.mesh, level.si))
                pen.draw(line, look_of(level, block.raised));
}

}  // namespace rakeline::drawing
