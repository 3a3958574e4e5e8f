// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "command/lens_text.hpp"
#include "command/verbs.hpp"

#include <memory>

namespace rakeline::command {
namespace {

struct LensWords {
    std::string file, projector, format, json;
    std::vector<std::string> series;
    bool imperial = false;
};

using Catalogue = std::vector<study::ListedLens>;

/// The layout's own lenses and those of the series files in the order named.
base::Result<Catalogue> catalogue_of(const room::Layout& layout,
                                     const std::vector<std::string>& files) {
    std::vector<room::Series> all;
    base::Problems problems;
    for (const std::string& file : files) {
        const auto text = base::read_text_file(file);
        auto series =
            text ? room::read_series(*text, file) : base::Result<room::Series>(text.problems());
        if (series)
            all.push_back(std::move(*series));
        else
            problems.insert(problems.end(), series.problems().begin(), series.problems().end());
    }
    if (!problems.empty()) return problems;
    return study::lens_catalogue(layout, all);
}

std::vector<picture::LensPick> picks_of(const study::Study& study,
                                        const Catalogue& catalogue,
                                        const study::Place& wanted) {
    std::vector<picture::LensPick> out;
    for (int p = 0; p < static_cast<int>(study.layout().projectors.size()); ++p) {
        for (int f = 0; f < static_cast<int>(study.layout().formats.size()); ++f) {
            if (wanted.projector.value_or(p) != p || wanted.format.value_or(f) != f) continue;
            if (auto pick = study::pick_lens(study, catalogue, p, f))
                out.push_back(std::move(*pick));
        }
    }
    return out;
}

std::string text_of(const room::Layout& layout,
                    const std::vector<picture::LensPick>& picks,
                    const Catalogue& catalogue,
                    base::UnitSystem system) {
    std::string out = layout.name + ": lenses\n";
    for (const picture::LensPick& pick : picks)
        out += "\n" + lens_text(layout, pick, catalogue, system);
    return out;
}

int pick_lenses(const LensWords& words) {
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const room::Layout& layout = study->layout();
    const auto projector = choose_projector(layout, words.projector);
    if (!projector) return refuse(projector.problems());
    const auto format = choose_format(layout, words.format);
    if (!format) return refuse(format.problems());
    const auto catalogue = catalogue_of(layout, words.series);
    if (!catalogue) return refuse(catalogue.problems());
    const auto picks = picks_of(*study, *catalogue, {.projector = *projector, .format = *format});
    if (picks.empty()) {
        return refuse("no projector chosen makes a format chosen",
                      "name a projector with a format that it has a use for");
    }
    if (!words.json.empty())
        return put_output(words.json, study::lens_json(layout, picks, *catalogue));
    return put_output("-", text_of(layout, picks, *catalogue, unit_system(words.imperial)));
}

}  // namespace

void add_lens_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("lens", "Rank lenses for a projector and format");
    auto words = std::make_shared<LensWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--projector", words->projector, "Projector by name; else all");
    verb->add_option("--format", words->format, "Format by name; else all");
    verb->add_option("--series", words->series,
                     "Series file whose lenses to try beside the layout's own; may be repeated")
        ->type_size(1)
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--imperial", words->imperial, "Feet and inches (text only)");
    verb->callback([&choice, words] { choice.action = [words] { return pick_lenses(*words); }; });
}

}  // namespace rakeline::command
