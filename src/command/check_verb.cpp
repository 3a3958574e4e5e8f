// SPDX-License-Identifier: MIT
#include "command/sampled.hpp"
#include "command/verbs.hpp"

#include <iostream>
#include <memory>

namespace rakeline::command {
namespace {

const char* verdict_words(const study::Study& study, bool missed) {
    if (missed) return "At least one limit is missed.";
    return study.brief->limits.limits.empty() ? "There is no limit in this set: nothing was held."
                                              : "All limits hold.";
}

int check(const std::string& file, bool no_crowd) {
    const auto study = sampled_study_file(file, no_crowd);
    if (!study) return refuse(study.problems());
    bool missed = false;
    for (const study::Finding& finding : study->findings) {
        missed = missed || finding.verdict == study::Verdict::missed;
        std::cout << (finding.verdict == study::Verdict::missed ? "missed  " : "near    ")
                  << study::subject_name(finding.subject) << ": " << finding.what << "\n        "
                  << finding.against << "\n";
        if (!finding.mend.empty()) std::cout << "        " << finding.mend << "\n";
    }
    if (no_crowd) std::cout << "No crowd was drawn: limits on its chances were left out.\n";
    std::cout << verdict_words(*study, missed) << " Limits: " << study->brief->limits.name << "\n";
    return missed ? kLimitMissed : kDone;
}

}  // namespace

void add_check_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("check", "Hold a room against its limits");
    auto file = std::make_shared<std::string>();
    verb->add_option("FILE", *file, "Layout file")->required();
    auto no_crowd = std::make_shared<bool>(false);
    add_no_crowd(*verb, *no_crowd);
    verb->callback([&choice, file, no_crowd] {
        choice.action = [file, no_crowd] { return check(*file, *no_crowd); };
    });
}

}  // namespace rakeline::command
