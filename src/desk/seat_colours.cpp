// SPDX-License-Identifier: MIT
#include "desk/seat_colours.hpp"

#include "desk/figure_view.hpp"
#include "drawing/palette.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

bool low_is_good(const study::Study& study, const study::Figure& figure) {
    for (const int index : figure.limits) {
        const room::Limit& limit = study.brief->limits.limits.at(static_cast<std::size_t>(index));
        if (limit.most && !limit.least) return true;
        if (limit.least) return false;
    }
    return false;
}

/// Whether the values differ by less than the last digit that is shown: a difference that no one
/// can read must not run through the whole palette.
bool alike(const SeatColours& colours) {
    const base::Unit unit = colours.figure->definition->unit;
    const base::ShownScale shown = base::shown_scale(unit, base::UnitSystem::metric);
    const double digit = std::pow(10.0, -shown.decimals) / std::abs(shown.factor);
    return colours.greatest - colours.least < 0.5 * digit;
}

void paint_values(SeatColours& colours) {
    const double range = colours.alike ? 0.0 : colours.greatest - colours.least;
    for (std::size_t i = 0; i < colours.figure->values.size(); ++i) {
        const study::Value& value = colours.figure->values[i];
        const auto seat = static_cast<std::size_t>(value.index);
        if (seat >= colours.seats.size()) continue;
        const double share = range > 0.0 ? (value.si - colours.least) / range : 1.0;
        const ImVec4 colour = legend_colour(colours, share);
        view::SeatPaint& paint = colours.seats[seat];
        paint.r = colour.x;
        paint.g = colour.y;
        paint.b = colour.z;
        paint.missed = colours.figure->verdicts.at(i) == study::Verdict::missed;
    }
}

void select_seats(const study::Study& study, const drawing::Shows& shows, SeatColours& colours) {
    using Kind = drawing::Shows::Kind;
    for (std::size_t i = 0; i < colours.seats.size(); ++i) {
        const bool seat = shows.kind == Kind::seat && shows.index == static_cast<int>(i);
        const bool row = shows.kind == Kind::row && study.seats.seats[i].row == shows.index;
        if (seat || row) colours.seats[i].selected = true;
    }
}

}  // namespace

SeatColours seat_colours(const study::Study& study, const Workspace& workspace) {
    SeatColours colours;
    colours.seats.resize(study.seats.seats.size());
    colours.figure = colouring_figure(study, workspace);
    if (colours.figure) {
        const auto e = extent(study, *colours.figure);
        colours.least = e->least.si;
        colours.greatest = e->greatest.si;
        colours.alike = alike(colours);
        colours.reversed = low_is_good(study, *colours.figure);
        paint_values(colours);
    }
    select_seats(study, workspace.selected, colours);
    return colours;
}

ImVec4 legend_colour(const SeatColours& colours, double share) {
    const double place = std::clamp(colours.reversed ? 1.0 - share : share, 0.0, 1.0);
    return of_rgb(drawing::cividis(place));
}

}  // namespace rakeline::desk
