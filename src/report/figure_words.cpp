// SPDX-License-Identifier: MIT
#include "report/figure_words.hpp"

#include <algorithm>

namespace rakeline::report {
using study::Axis;

const char* scope_words(room::LimitScope scope) {
    switch (scope) {
        case room::LimitScope::every:
            return "";
        case room::LimitScope::first_row:
            return " (first row)";
        case room::LimitScope::last_row:
            return " (last row)";
        case room::LimitScope::reference_seat:
            return " (reference seat)";
        case room::LimitScope::screen_channels:
            return " (screen channels)";
    }
    return "";
}

namespace {

template <class List>
void add_name(std::vector<std::string>& parts, const List& list, std::optional<int> index) {
    if (index) parts.push_back(list.at(static_cast<std::size_t>(*index)).name);
}

}  // namespace

std::string band_text(double frequency_hz) {
    return base::quantity_text(frequency_hz, base::Unit::hertz);
}

std::string figure_of(const study::Study& study,
                      const study::Figure& figure,
                      const std::string& between) {
    std::vector<std::string> parts;
    add_name(parts, study.layout().projectors, figure.projector);
    add_name(parts, study.layout().formats, figure.format);
    add_name(parts, study.layout().loudspeakers, figure.loudspeaker);
    if (figure.band)
        parts.push_back(band_text(sound::kOctaves.at(static_cast<std::size_t>(*figure.band))));
    std::string text;
    for (const std::string& part : parts)
        text += (text.empty() ? "" : between) + part;
    return text;
}

std::string place_name(const study::Study& study, const study::Figure& figure, int index) {
    const auto i = static_cast<std::size_t>(index);
    switch (figure.definition->axis()) {
        case Axis::seat:
            return study::index_name(study, *figure.definition, index);
        case Axis::row:
            return "row " + study::index_name(study, *figure.definition, index);
        case Axis::band:
            return band_text(figure.definition->third_octaves ? sound::kThirds.at(i)
                                                              : sound::kOctaves.at(i));
        case Axis::none:
            break;
    }
    return {};
}

std::string limit_text(const room::Limit& limit, base::Unit unit, base::UnitSystem system) {
    std::string text;
    if (limit.least && limit.most) {
        text = base::quantity(*limit.least, unit, system).number + " to " +
               base::quantity_text(*limit.most, unit, system);
    } else if (limit.least) {
        text = "at least " + base::quantity_text(*limit.least, unit, system);
    } else if (limit.most) {
        text = "at most " + base::quantity_text(*limit.most, unit, system);
    }
    if (limit.band_hz) text += " at " + band_text(*limit.band_hz);
    return text + scope_words(limit.scope);
}

std::string limits_text(const study::Study& study,
                        const study::Figure& figure,
                        base::UnitSystem system) {
    std::string text;
    for (const int index : figure.limits) {
        const room::Limit& limit = study.brief->limits.limits.at(static_cast<std::size_t>(index));
        text += (text.empty() ? "" : "; ") + limit_text(limit, figure.definition->unit, system);
    }
    return text.empty() ? "–" : text;
}

std::optional<Spread> spread_of(const study::Figure& figure) {
    if (figure.values.empty()) return std::nullopt;
    std::vector<study::Value> sorted = figure.values;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const study::Value& a, const study::Value& b) { return a.si < b.si; });
    return Spread{sorted.front(), sorted[(sorted.size() - 1) / 2], sorted.back()};
}

Tally tally(const study::Study& study, study::Subject subject) {
    Tally counts;
    for (const study::Figure& figure : study.figures) {
        if (figure.definition->subject != subject) continue;
        switch (figure.worst) {
            case study::Verdict::holds:
                ++counts.holds;
                break;
            case study::Verdict::near:
                ++counts.near;
                break;
            case study::Verdict::missed:
                ++counts.missed;
                break;
            case study::Verdict::no_limit:
                ++counts.no_limit;
                break;
        }
    }
    return counts;
}

}  // namespace rakeline::report
