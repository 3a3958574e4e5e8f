// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"

#include "desk/strip.hpp"
#include "sound/sound_study.hpp"
#include "study/crowd_words.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace rakeline::desk {
namespace {

/// Lower is worse: how far a value stands within the nearest of the bounds that hold it.
double standing(const study::Study& study, const study::Figure& figure, double si) {
    if (figure.limits.empty()) return -si;
    double least = HUGE_VAL;
    for (const int index : figure.limits) {
        const room::Limit& limit = study.brief->limits.limits.at(static_cast<std::size_t>(index));
        if (limit.least) least = std::min(least, si - *limit.least);
        if (limit.most) least = std::min(least, *limit.most - si);
    }
    return least;
}

bool matches(const std::optional<int>& of, int chosen) {
    return !of || *of == chosen;
}

bool at_chosen_place(const study::Figure& figure, const Workspace& w) {
    return matches(figure.projector, w.projector) && matches(figure.format, w.format) &&
           matches(figure.loudspeaker, w.loudspeaker) && matches(figure.band, w.band);
}

std::string band_name(int band) {
    const double hz = sound::kOctaves.at(static_cast<std::size_t>(band));
    return base::quantity_text(hz, base::Unit::hertz);
}

std::string place_words(const study::Study& study, const study::Figure& figure) {
    std::string words;
    const auto add = [&](const std::string& word) { words += (words.empty() ? "" : " · ") + word; };
    const room::Layout& layout = study.layout();
    if (figure.loudspeaker)
        add(layout.loudspeakers.at(static_cast<std::size_t>(*figure.loudspeaker)).name);
    if (figure.band) add(band_name(*figure.band));
    if (figure.projector)
        add(layout.projectors.at(static_cast<std::size_t>(*figure.projector)).name);
    if (figure.format) add(layout.formats.at(static_cast<std::size_t>(*figure.format)).name);
    return words;
}

bool awaits_crowd(const study::Study& study, const study::FigureDefinition& definition) {
    return !study.crowd && !study.seats.seats.empty() && !study.layout().formats.empty() &&
           study::needs_crowd(definition);
}

std::string group_title(const study::Study& study, const study::Figure& figure) {
    std::string what;
    switch (figure.definition->axis()) {
        case study::Axis::seat:
            what = "EVERY SEAT";
            break;
        case study::Axis::row:
            what = "EVERY ROW";
            break;
        case study::Axis::band:
            what = "EVERY BAND";
            break;
        case study::Axis::none:
            break;
    }
    const std::string place = place_words(study, figure);
    if (what.empty() && place.empty()) return "THE WHOLE ROOM";
    if (what.empty()) return place;
    return place.empty() ? what : what + " · " + place;
}

}  // namespace

std::optional<Extent> extent(const study::Study& study, const study::Figure& figure) {
    if (figure.values.empty()) return {};
    const auto at = [&](std::size_t i) {
        return Extreme{figure.values[i].index, figure.values[i].si, figure.verdicts.at(i)};
    };
    Extent out{at(0), at(0), at(0)};
    double worst_standing = standing(study, figure, out.worst.si);
    for (std::size_t i = 1; i < figure.values.size(); ++i) {
        const Extreme one = at(i);
        if (one.si < out.least.si) out.least = one;
        if (one.si > out.greatest.si) out.greatest = one;
        if (one.verdict < out.worst.verdict) continue;
        const double stands = standing(study, figure, one.si);
        if (one.verdict == out.worst.verdict && !(stands < worst_standing)) continue;
        out.worst = one;
        worst_standing = stands;
    }
    return out;
}

study::Place chosen_place(const Workspace& w) {
    study::Place place;
    place.projector = w.projector;
    place.format = w.format;
    place.loudspeaker = w.loudspeaker;
    place.band = w.band;
    return place;
}

std::vector<FigureGroup> figure_groups(const study::Study& study, const Workspace& w) {
    std::vector<FigureGroup> groups;
    const auto group_of = [&](const study::Figure& figure) -> FigureGroup& {
        const std::string title = group_title(study, figure);
        const auto group = std::find_if(groups.begin(), groups.end(),
                                        [&](const FigureGroup& g) { return g.title == title; });
        if (group != groups.end()) return *group;
        return groups.emplace_back(FigureGroup{title, {}, {}});
    };
    for (const study::FigureDefinition& definition : study::figure_register()) {
        if (definition.subject != w.subject || !definition.listed) continue;
        if (awaits_crowd(study, definition)) {
            study::Figure place;
            place.definition = &definition;
            if (definition.per.format) place.format = w.format;
            group_of(place).awaited.push_back(&definition);
        }
        for (const study::Figure& figure : study.figures)
            if (figure.definition == &definition && !figure.values.empty() &&
                at_chosen_place(figure, w))
                group_of(figure).figures.push_back(&figure);
    }
    return groups;
}

const char* awaited_words(const PanelInput& in) {
    return in.sampling || in.studying ? "being sampled" : study::kNotSampled;
}

std::vector<const study::Figure*> seat_figures(const study::Study& study, const Workspace& w) {
    std::vector<const study::Figure*> figures;
    for (const study::Figure& figure : study.figures)
        if (figure.definition->axis() == study::Axis::seat && !figure.values.empty() &&
            at_chosen_place(figure, w))
            figures.push_back(&figure);
    return figures;
}

const study::Figure* colouring_figure(const study::Study& study, const Workspace& w) {
    const auto figures = seat_figures(study, w);
    const study::Figure* best = nullptr;
    for (const study::Figure* figure : figures) {
        if (figure->definition->id == w.seat_figure) return figure;
        const auto rank = [&](const study::Figure* f) {
            return std::pair(f->definition->subject == w.subject, f->worst);
        };
        if (w.seat_figure.empty() && (!best || rank(figure) > rank(best))) best = figure;
    }
    return best;
}

std::string limit_text(const room::Limit& limit, base::Unit unit, base::UnitSystem units) {
    std::string text;
    if (limit.least && limit.most)
        text = base::quantity_text(*limit.least, unit, units) + " to " +
               base::quantity_text(*limit.most, unit, units);
    else if (limit.least)
        text = "at least " + base::quantity_text(*limit.least, unit, units);
    else if (limit.most)
        text = "at most " + base::quantity_text(*limit.most, unit, units);
    if (text.empty()) return text;
    const char* whose = limit.authority == room::Authority::yours ? "yours" : "";
    const std::string source = limit.source.empty() ? whose : limit.source;
    return source.empty() ? text : text + " · " + source;
}

LimitCount count_limits(const study::Study& study) {
    LimitCount count;
    for (const study::Figure& figure : study.figures) {
        if (figure.worst == study::Verdict::no_limit) continue;
        ++count.all;
        if (figure.worst != study::Verdict::missed) ++count.hold;
    }
    return count;
}

std::vector<std::size_t> finding_order(const study::Study& study, study::Subject open) {
    std::vector<std::size_t> order(study.findings.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto rank = [&](std::size_t i) {
        const study::Finding& finding = study.findings[i];
        return std::pair(finding.verdict != study::Verdict::missed, finding.subject != open);
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return rank(a) < rank(b); });
    return order;
}

void clamp_choices(Workspace& w, const study::Study& study) {
    const auto clamp = [](int& index, std::size_t count) {
        index = std::clamp(index, 0, std::max(0, static_cast<int>(count) - 1));
    };
    clamp(w.projector, study.layout().projectors.size());
    clamp(w.format, study.layout().formats.size());
    clamp(w.loudspeaker, study.layout().loudspeakers.size());
    clamp(w.band, sound::kOctaves.size());
    if (name_of(study, w.selected).empty()) w.selected = {};
    if (w.selected.kind == drawing::Shows::Kind::projector) w.projector = w.selected.index;
    if (w.selected.kind == drawing::Shows::Kind::loudspeaker) w.loudspeaker = w.selected.index;
    const auto& projectors = study.layout().projectors;
    w.film = !projectors.empty() &&
             projectors[static_cast<std::size_t>(w.projector)].kind == room::SourceKind::film;
    const auto strips = offered_strips(w);
    if (std::find(strips.begin(), strips.end(), w.strip) == strips.end())
        w.strip = StripDrawing::section;
}

std::string name_of(const study::Study& study, const drawing::Shows& shows) {
    using Kind = drawing::Shows::Kind;
    const auto named = [&](const char* kind, const auto& items, auto&& name) -> std::string {
        const auto index = static_cast<std::size_t>(shows.index);
        if (shows.index < 0 || index >= items.size()) return {};
        return std::string(kind) + name(items[index]);
    };
    const auto by_name = [](const auto& item) { return item.name; };
    switch (shows.kind) {
        case Kind::seat:
            return named("Seat ", study.seats.seats, by_name);
        case Kind::row:
            return named("Row ", study.seats.rows, [](const auto& r) { return r.letter; });
        case Kind::projector:
            return named("", study.layout().projectors, by_name);
        case Kind::loudspeaker:
            return named("", study.layout().loudspeakers, by_name);
        case Kind::screen:
            return "Screen";
        case Kind::hall:
            return "Hall";
        case Kind::nothing:
            break;
    }
    return {};
}

}  // namespace rakeline::desk
