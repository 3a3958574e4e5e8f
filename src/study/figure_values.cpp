// SPDX-License-Identifier: MIT
#include "study/figure_values.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace rakeline::study {
namespace {

int count_of(std::size_t n) {
    return static_cast<int>(n);
}

/// How many values a figure has along its axis.
int axis_length(const Study& study, const FigureDefinition& d) {
    switch (d.axis()) {
        case Axis::seat:
            return count_of(study.seats.seats.size());
        case Axis::row:
            return count_of(study.seats.rows.size());
        case Axis::band:
            return count_of(d.third_octaves ? sound::kThirds.size() : sound::kOctaves.size());
        case Axis::none:
            break;
    }
    return 1;
}

Figure evaluate_one(const Study& study, const FigureDefinition& d, const Cell& place) {
    Figure figure;
    figure.definition = &d;
    if (d.per.projector) figure.projector = place.projector;
    if (d.per.format) figure.format = place.format;
    if (d.per.loudspeaker) figure.loudspeaker = place.loudspeaker;
    if (d.per.band && d.axis() != Axis::band) figure.band = place.band;
    Working silent(false);
    const int count = axis_length(study, d);
    figure.values.reserve(static_cast<std::size_t>(count));
    for (int index = 0; index < count; ++index) {
        const Cell cell{study, place.projector, place.format, place.loudspeaker, place.band, index};
        if (const auto value = d.evaluate(cell, silent)) figure.values.push_back({index, *value});
    }
    return figure;
}

/// Calls `visit` for each combination of what the definition is per, in a fixed order.
template <class Visit>
void for_each_place(const Study& study, const FigureDefinition& d, Visit visit) {
    const room::Layout& layout = study.layout();
    const auto range = [](bool per, std::size_t n) { return per ? count_of(n) : 1; };
    const int projectors = range(d.per.projector, layout.projectors.size());
    const int formats = range(d.per.format, layout.formats.size());
    const int loudspeakers = range(d.per.loudspeaker, layout.loudspeakers.size());
    const int bands = range(d.per.band && d.axis() != Axis::band, sound::kOctaves.size());
    for (int p = 0; p < projectors; ++p) {
        for (int f = 0; f < formats; ++f) {
            for (int l = 0; l < loudspeakers; ++l) {
                for (int b = 0; b < bands; ++b)
                    visit(Cell{study, p, f, l, b, 0});
            }
        }
    }
}

/// Whether no row's eyes are nearer to (farther from) the screen by more than a millimetre: blocks
/// side by side all have a first row.
bool is_extreme_row(const Study& study, int row, bool nearest) {
    constexpr double kSameRow_m = 1e-3;
    const auto& rows = study.seats.rows;
    const double back = rows.at(static_cast<std::size_t>(row)).centre_eye.z;
    return std::none_of(rows.begin(), rows.end(), [&](const room::Row& other) {
        const double beyond = nearest ? back - other.centre_eye.z : other.centre_eye.z - back;
        return beyond > kSameRow_m;
    });
}

/// For a figure of the sheet itself: whether sound has to pass it. A room without loudspeakers is
/// still choosing its sheet.
bool sheet_is_in_use(const room::Layout& layout) {
    const auto& all = layout.loudspeakers;
    return all.empty() || std::any_of(all.begin(), all.end(),
                                      [](const room::Loudspeaker& l) { return l.behind_screen; });
}

bool concerns_screen_channels(const Study& study, const Figure& figure) {
    if (!figure.loudspeaker) return sheet_is_in_use(study.layout());
    const room::Channel channel =
        study.layout().loudspeakers.at(static_cast<std::size_t>(*figure.loudspeaker)).channel;
    return channel == room::Channel::left || channel == room::Channel::centre ||
           channel == room::Channel::right;
}

bool scope_includes(const Study& study, const Figure& figure, room::LimitScope scope, int index) {
    const Axis axis = figure.definition->axis();
    if (scope == room::LimitScope::every) return true;
    if (scope == room::LimitScope::screen_channels) return concerns_screen_channels(study, figure);
    if (axis != Axis::seat && axis != Axis::row) return false;
    if (scope == room::LimitScope::reference_seat) {
        return axis == Axis::seat && study.reference_seat == index;
    }
    const int row =
        axis == Axis::row ? index : study.seats.seats.at(static_cast<std::size_t>(index)).row;
    return is_extreme_row(study, row, scope == room::LimitScope::first_row);
}

bool kind_matches(const Study& study, const Figure& figure, const room::Limit& limit) {
    if (!limit.source_kind) return true;
    if (!figure.projector) return false;
    return study.layout().projectors.at(static_cast<std::size_t>(*figure.projector)).kind ==
           *limit.source_kind;
}

bool band_matches(const Figure& figure, const room::Limit& limit, int index) {
    if (!limit.band_hz) return true;
    return figure.definition->per.band && band_frequency(figure, index) == *limit.band_hz;
}

void hold_to_limits(const Study& study, Figure& figure) {
    const std::vector<int> candidates = limits_on(study, figure);
    std::set<int> used;
    figure.verdicts.assign(figure.values.size(), Verdict::no_limit);
    for (std::size_t i = 0; i < figure.values.size() && !candidates.empty(); ++i) {
        const Value& value = figure.values[i];
        for (const int limit : candidates) {
            if (!applies_at(study, figure, limit, value.index)) continue;
            used.insert(limit);
            const auto& one = study.brief->limits.limits.at(static_cast<std::size_t>(limit));
            figure.verdicts[i] = std::max(figure.verdicts[i], verdict_of(value.si, one));
        }
        figure.worst = std::max(figure.worst, figure.verdicts[i]);
    }
    figure.limits.assign(used.begin(), used.end());
}

}  // namespace

double band_frequency(const Figure& figure, int index) {
    if (figure.band) return sound::kOctaves.at(static_cast<std::size_t>(*figure.band));
    const auto i = static_cast<std::size_t>(index);
    return figure.definition->third_octaves ? sound::kThirds.at(i) : sound::kOctaves.at(i);
}

std::vector<int> limits_on(const Study& study, const Figure& figure) {
    std::vector<int> out;
    const auto& limits = study.brief->limits.limits;
    for (std::size_t i = 0; i < limits.size(); ++i) {
        if (limits[i].figure == figure.definition->id && kind_matches(study, figure, limits[i])) {
            out.push_back(static_cast<int>(i));
        }
    }
    return out;
}

bool applies_at(const Study& study, const Figure& figure, int limit, int index) {
    const room::Limit& one = study.brief->limits.limits.at(static_cast<std::size_t>(limit));
    return band_matches(figure, one, index) && scope_includes(study, figure, one.scope, index);
}

Verdict verdict_of(double si, const room::Limit& limit) {
    // A floor that is solved for 60 mm comes out at 60 mm less a few last bits: that holds.
    constexpr double kRounding = 1e-12;
    const auto slack = [](double bound) { return kRounding * std::abs(bound); };
    if ((limit.least && si < *limit.least - slack(*limit.least)) ||
        (limit.most && si > *limit.most + slack(*limit.most))) {
        return Verdict::missed;
    }
    const bool near = limit.near > 0.0 && ((limit.least && si < *limit.least + limit.near) ||
                                           (limit.most && si > *limit.most - limit.near));
    return near ? Verdict::near : Verdict::holds;
}

double excess_of(double si, const room::Limit& limit) {
    const auto share = [](double beyond, double bound) {
        return beyond / std::max(std::abs(bound), 1e-9);
    };
    double excess = -1e9;
    if (limit.least) excess = std::max(excess, share(*limit.least - si, *limit.least));
    if (limit.most) excess = std::max(excess, share(si - *limit.most, *limit.most));
    return excess;
}

std::vector<Figure> evaluate_figures(const Study& study) {
    std::vector<Figure> out;
    for (const FigureDefinition& d : figure_register()) {
        for_each_place(study, d, [&](const Cell& place) {
            Figure figure = evaluate_one(study, d, place);
            if (figure.values.empty()) return;
            hold_to_limits(study, figure);
            out.push_back(std::move(figure));
        });
    }
    return out;
}

}  // namespace rakeline::study
