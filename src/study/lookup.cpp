// SPDX-License-Identifier: MIT
#include "base/nearest_name.hpp"
#include "base/number_text.hpp"
#include "study/study.hpp"

#include <algorithm>

namespace rakeline::study {
namespace {

bool fits(std::optional<int> figure_has, std::optional<int> wanted) {
    return !figure_has || !wanted || *figure_has == *wanted;
}

bool fits(const Figure& figure, const Place& place) {
    return fits(figure.projector, place.projector) && fits(figure.format, place.format) &&
           fits(figure.loudspeaker, place.loudspeaker) && fits(figure.band, place.band);
}

/// The row's letter; with its block's name where another block has a row of that letter.
std::string row_name(const Study& study, std::size_t row) {
    const room::Row& named = study.seats.rows.at(row);
    const auto same = std::count_if(study.seats.rows.begin(), study.seats.rows.end(),
                                    [&](const room::Row& r) { return r.letter == named.letter; });
    if (same == 1) return named.letter;
    return named.letter + ", " +
           study.layout().seating.at(static_cast<std::size_t>(named.block)).name;
}

}  // namespace

const Figure* find_figure(const Study& study, std::string_view id, const Place& place) {
    for (const Figure& figure : study.figures) {
        if (figure.definition->id == id && fits(figure, place)) return &figure;
    }
    return nullptr;
}

std::optional<double> value_at(const Figure& figure, int index) {
    const auto found = std::lower_bound(figure.values.begin(), figure.values.end(), index,
                                        [](const Value& v, int i) { return v.index < i; });
    if (found == figure.values.end() || found->index != index) return std::nullopt;
    return found->si;
}

std::string index_name(const Study& study, const FigureDefinition& definition, int index) {
    const auto i = static_cast<std::size_t>(index);
    switch (definition.axis()) {
        case Axis::seat:
            return study.seats.seats.at(i).name;
        case Axis::row:
            return row_name(study, i);
        case Axis::band:
            return base::exact_text(definition.third_octaves ? sound::kThirds.at(i)
                                                             : sound::kOctaves.at(i));
        case Axis::none:
            break;
    }
    return {};
}

Verdict subject_verdict(const Study& study, Subject subject, const Place& place) {
    Verdict worst = Verdict::no_limit;
    for (const Figure& figure : study.figures) {
        if (figure.definition->subject == subject && fits(figure, place)) {
            worst = std::max(worst, figure.worst);
        }
    }
    for (const Finding& finding : study.findings) {
        if (finding.subject == subject && fits(finding.place.projector, place.projector) &&
            fits(finding.place.format, place.format)) {
            worst = std::max(worst, finding.verdict);
        }
    }
    return worst;
}

base::Result<room::Brief> open_room(const std::string& path, const base::ReadText& read) {
    base::Result<room::Brief> brief = room::open_brief(path, read);
    if (!brief) return brief;
    std::vector<std::string> ids;
    for (const FigureDefinition& definition : figure_register())
        ids.emplace_back(definition.id);
    base::Problems problems;
    for (std::size_t i = 0; i < brief->limits.limits.size(); ++i) {
        const std::string& id = brief->limits.limits[i].figure;
        if (find_definition(id)) continue;
        const std::string near = base::nearest_name(id, ids);
        problems.push_back({.file = base::path_beside(path, brief->layout.limits_file),
                            .line = 0,
                            .where = "limits[" + std::to_string(i) + "].figure",
                            .what = "there is no figure '" + id + "'",
                            .mend = near.empty() ? "'rakeline figures' lists them all"
                                                 : "did you mean '" + near + "'?"});
    }
    if (!problems.empty()) return problems;
    return brief;
}

}  // namespace rakeline::study
