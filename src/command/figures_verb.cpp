// SPDX-License-Identifier: MIT
#include "command/verbs.hpp"
#include "study/study_json.hpp"

#include <iostream>
#include <memory>

namespace rakeline::command {
namespace {

int figures(bool json) {
    if (json) return put_output("-", study::register_json());
    study::Subject subject{};
    bool first = true;
    for (const study::FigureDefinition& d : study::figure_register()) {
        if (first || d.subject != subject) {
            std::cout << (first ? "" : "\n") << study::subject_title(d.subject) << "\n";
        }
        first = false;
        subject = d.subject;
        std::cout << "  " << d.id << "  [" << base::json_unit(d.unit) << "]\n      " << d.meaning
                  << "\n      " << d.formula << "\n      source: " << d.source << "\n";
    }
    return kDone;
}

}  // namespace

void add_figures_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("figures", "List every figure: meaning, unit, formula, source");
    auto json = std::make_shared<bool>(false);
    verb->add_flag("--json", *json, "As JSON on standard output");
    verb->callback([&choice, json] { choice.action = [json] { return figures(*json); }; });
}

}  // namespace rakeline::command
