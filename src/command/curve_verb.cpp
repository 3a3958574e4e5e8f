// SPDX-License-Identifier: MIT
#include "command/curve_text.hpp"
#include "command/verbs.hpp"
#include "room/layout_file.hpp"
#include "study/curve_json.hpp"

#include <memory>

namespace rakeline::command {
namespace {

struct CurveWords {
    std::string file, projector, format, take = "curve", json, output;
    bool imperial = false, force = false;
};

/// Writes the layout with the most even curve or tilt.
int put_surface(const study::Study& study,
                const light::CurvatureHelp& help,
                const CurveWords& words) {
    const bool curve = words.take == "curve";
    const auto& trials = curve ? help.curves : help.tilts;
    const auto& best = curve ? help.best_curve : help.best_tilt;
    if (!best)
        return refuse("no " + words.take + " stands clear of the screen wall",
                      "set the screen farther from its wall");
    const room::Layout layout =
        study::with_surface(study.layout(), trials[static_cast<std::size_t>(*best)]);
    const base::Problems problems = room::check_layout(layout);
    return problems.empty() ? put_layout(layout, words.file, words.output) : refuse(problems);
}

int put_trials(const study::Study& study, const CurveWords& words, int projector, int format) {
    const auto help = study::curve_trials(study, projector, format);
    if (!help)
        return refuse("there is nothing to try a curve on",
                      "name a projector with a format that it shows, in a room with seats");
    if (!words.output.empty()) {
        const int put = put_surface(study, *help, words);
        if (put != kDone) return put;
    }
    if (!words.json.empty())
        return put_output(words.json, study::curve_json(study, projector, format, *help));
    return put_output("-",
                      curve_text(study, projector, format, *help, unit_system(words.imperial)));
}

int curve(const CurveWords& words) {
    if (words.take != "curve" && words.take != "tilt")
        return refuse("'" + words.take + "' is nothing to take", "name curve or tilt");
    if (!words.output.empty() && !words.force && same_file(words.file, words.output)) {
        return refuse("-o names the layout that is read",
                      "name a new file, or add --force to write over it");
    }
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto projector = choose_projector(study->layout(), words.projector);
    if (!projector) return refuse(projector.problems());
    const auto format = choose_format(study->layout(), words.format);
    if (!format) return refuse(format.problems());
    return put_trials(*study, words, projector->value_or(0), format->value_or(0));
}

}  // namespace

void add_curve_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("curve", "Try the screen's curve and tilt for even light");
    auto words = std::make_shared<CurveWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--projector", words->projector, "Projector by name; else the first");
    verb->add_option("--format", words->format, "Format by name; else the first");
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--imperial", words->imperial, "Feet and inches (text only)");
    verb->add_option("-o", words->output, "Layout to write, with the most even curve or tilt");
    verb->add_option("--take", words->take, "What -o takes: curve or tilt")->capture_default_str();
    verb->add_flag("--force", words->force, "Write over the layout that is read");
    verb->callback([&choice, words] { choice.action = [words] { return curve(*words); }; });
}

}  // namespace rakeline::command
