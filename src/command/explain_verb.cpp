// SPDX-License-Identifier: MIT
#include "base/nearest_name.hpp"
#include "base/number_text.hpp"
#include "command/sampled.hpp"
#include "command/verbs.hpp"

#include <iostream>
#include <memory>

namespace rakeline::command {
namespace {

struct ExplainWords {
    std::string file, figure, format, projector, loudspeaker, seat, row, band;
    bool imperial = false;
};

base::Problem unknown_figure(const std::string& id) {
    std::vector<std::string> ids;
    for (const study::FigureDefinition& d : study::figure_register())
        ids.emplace_back(d.id);
    const std::string near = base::nearest_name(id, ids);
    return {.file = {},
            .line = 0,
            .where = {},
            .what = "there is no figure '" + id + "'",
            .mend = near.empty()
                        ? "'rakeline figures' lists them all"
                        : "did you mean '" + near + "'? 'rakeline figures' lists them all"};
}

/// Index of the band named by its mid-frequency, in octaves or third octaves.
base::Result<std::optional<int>> choose_band(const study::FigureDefinition& d,
                                             const std::string& text) {
    if (text.empty()) return std::optional<int>();
    const auto find = [&](const auto& bands) {
        std::optional<int> found;
        for (std::size_t i = 0; i < bands.size(); ++i) {
            if (base::exact_text(bands[i]) == text) found = static_cast<int>(i);
        }
        return found;
    };
    if (const auto band = d.third_octaves ? find(sound::kThirds) : find(sound::kOctaves))
        return band;
    return base::Problem{.file = {},
                         .line = 0,
                         .where = {},
                         .what = "there is no band '" + text + "'",
                         .mend = "name its mid-frequency in Hz, for example 1000"};
}

/// Along the figure's axis: what the words name, else the reference seat, else the first defined.
int index_in(const study::Study& study, const study::Figure& figure, const study::Place& place) {
    switch (figure.definition->axis()) {
        case study::Axis::seat:
            return place.seat.value_or(study.reference_seat.value_or(0));
        case study::Axis::row:
            return place.row.value_or(figure.values.front().index);
        case study::Axis::band:
            return place.band.value_or(figure.values.front().index);
        case study::Axis::none:
            break;
    }
    return 0;
}

base::Result<study::Place> place_in(const study::Study& study,
                                    const study::FigureDefinition& d,
                                    const ExplainWords& words) {
    study::Place place;
    base::Problems problems;
    const auto take = [&](const base::Result<std::optional<int>>& chosen,
                          std::optional<int>& into) {
        if (chosen) {
            into = *chosen;
        } else {
            problems.insert(problems.end(), chosen.problems().begin(), chosen.problems().end());
        }
    };
    take(choose_format(study.layout(), words.format), place.format);
    take(choose_projector(study.layout(), words.projector), place.projector);
    take(choose_loudspeaker(study.layout(), words.loudspeaker), place.loudspeaker);
    take(choose_seat(study, words.seat), place.seat);
    take(choose_row(study, words.row), place.row);
    take(choose_band(d, words.band), place.band);
    if (!problems.empty()) return problems;
    return place;
}

int explain(const ExplainWords& words) {
    const study::FigureDefinition* d = study::find_definition(words.figure);
    if (!d) return refuse({unknown_figure(words.figure)});
    const auto study = sampled_study_file(words.file, !study::needs_crowd(*d));
    if (!study) return refuse(study.problems());
    const auto place = place_in(*study, *d, words);
    if (!place) return refuse(place.problems());
    study::Place sought = *place;
    // A band along the axis picks the value, not the figure.
    if (d->axis() == study::Axis::band) sought.band.reset();
    const study::Figure* figure = study::find_figure(*study, words.figure, sought);
    if (!figure) {
        return refuse("'" + words.figure + "' has no value there",
                      "this projector may not make this format, or the room lacks what it needs");
    }
    const auto derivation = study::derive(*study, *figure, index_in(*study, *figure, *place));
    for (const auto& line : study::derivation_text(derivation, unit_system(words.imperial))) {
        std::cout << line << "\n";
    }
    return kDone;
}

}  // namespace

void add_explain_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("explain", "Show how a figure comes about, with its source");
    auto words = std::make_shared<ExplainWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("FIGURE", words->figure, "Id of the figure, for example picture.throw")
        ->required();
    verb->add_option("--format", words->format, "Format by name; else the first");
    verb->add_option("--projector", words->projector, "Projector by name; else the first");
    verb->add_option("--loudspeaker", words->loudspeaker, "Loudspeaker by name; else the first");
    verb->add_option("--seat", words->seat, "Seat, for example C14; else the reference seat");
    verb->add_option("--row", words->row, "Row letter; else the first that has a value");
    verb->add_option("--band", words->band, "Band by its mid-frequency in Hz; else the lowest");
    verb->add_flag("--imperial", words->imperial, "Feet, foot-lamberts");
    verb->callback([&choice, words] { choice.action = [words] { return explain(*words); }; });
}

}  // namespace rakeline::command
