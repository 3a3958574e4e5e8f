// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "base/number_text.hpp"
#include "command/perforation_text.hpp"
#include "command/verbs.hpp"
#include "study/perforation_json.hpp"

#include <cmath>
#include <memory>

namespace rakeline::command {
namespace {

struct PerforationWords {
    std::string file, json, take, output;
    std::vector<std::string> series;
    bool imperial = false, force = false;
};

/// The sheets of the series named, else of the one beside the layout.
base::Result<std::vector<room::SheetChoice>> catalogue_of(const PerforationWords& words) {
    std::vector<std::string> files = words.series;
    if (files.empty()) files.push_back(sheet_series(words.file));
    std::vector<room::Series> all;
    for (const std::string& file : files) {
        const auto text = base::read_text_file(file);
        auto series =
            text ? room::read_series(*text, file) : base::Result<room::Series>(text.problems());
        if (!series) return series.problems();
        all.push_back(std::move(*series));
    }
    return study::sheet_catalogue(all);
}

/// The layout with the sheet of that number, or with its holes turned as advised.
base::Result<room::Layout> taken(const study::Study& study,
                                 const study::SheetTrials& trials,
                                 const std::string& take) {
    const auto refused = [](const std::string& what, const std::string& mend) {
        return base::Problem{.file = {}, .line = 0, .where = "--take", .what = what, .mend = mend};
    };
    if (take == "turn") {
        if (!trials.turn)
            return refused("there is nothing to turn the holes for",
                           "give the screen holes, and the room a digital picture and seats");
        return study::with_turn(study.layout(), *trials.turn);
    }
    const auto number = base::parse_number(take);
    const auto last = static_cast<double>(trials.trials.size() - 1);
    if (!number || *number < 1.0 || *number > last || *number != std::floor(*number))
        return refused(
            "'" + take + "' is no sheet of the table",
            "name its number, 1 to " + std::to_string(trials.trials.size() - 1) + ", or turn");
    return study::with_sheet(study.layout(),
                             trials.trials[static_cast<std::size_t>(*number)].sheet);
}

int put_taken(const study::Study& study,
              const study::SheetTrials& trials,
              const PerforationWords& words) {
    const auto layout = taken(study, trials, words.take);
    if (!layout) return refuse(layout.problems());
    const base::Problems problems = room::check_layout(*layout);
    return problems.empty() ? put_layout(*layout, words.file, words.output) : refuse(problems);
}

int perforation(const PerforationWords& words) {
    if (words.output.empty() != words.take.empty())
        return refuse(words.take.empty() ? "-o without a sheet to take" : "--take without a file",
                      "give both --take with a number of the table, or turn, and -o");
    if (!words.output.empty() && !words.force && same_file(words.file, words.output)) {
        return refuse("-o names the layout that is read",
                      "name a new file, or add --force to write over it");
    }
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto catalogue = catalogue_of(words);
    if (!catalogue) return refuse(catalogue.problems());
    const auto trials = study::sheet_trials(*study, *catalogue);
    if (!words.output.empty()) {
        const int put = put_taken(*study, *trials, words);
        if (put != kDone) return put;
    }
    if (!words.json.empty())
        return put_output(words.json, study::perforation_json(*study, *trials));
    return put_output("-", perforation_text(*study, *trials, unit_system(words.imperial)));
}

}  // namespace

void add_perforation_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("perforation", "Set screen sheets against each other");
    auto words = std::make_shared<PerforationWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--series", words->series,
                     "Series file with sheets; else series/perforations.json beside the layout")
        ->type_size(1)
        ->expected(1)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--imperial", words->imperial, "Feet and inches (text only)");
    verb->add_option("--take", words->take, "What -o takes: a number of the table, or turn");
    verb->add_option("-o", words->output, "Layout to write, with that sheet or its holes turned");
    verb->add_flag("--force", words->force, "Write over the layout that is read");
    verb->callback([&choice, words] { choice.action = [words] { return perforation(*words); }; });
}

}  // namespace rakeline::command
