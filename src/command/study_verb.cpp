// SPDX-License-Identifier: MIT
#include "command/sampled.hpp"
#include "command/study_text.hpp"
#include "command/verbs.hpp"
#include "study/study_json.hpp"

#include <algorithm>
#include <chrono>
#include <iostream>
#include <memory>

namespace rakeline::command {
namespace {

struct StudyWords {
    std::string file, format, json;
    bool time = false;
    bool imperial = false;
    bool no_crowd = false;
};

double milliseconds_to_study(const std::shared_ptr<const room::Brief>& brief) {
    const auto start = std::chrono::steady_clock::now();
    const study::Study study = study::compute_study(brief);
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start)
        .count();
}

/// From scratch each time: no memory of earlier results helps.
void print_time(const std::shared_ptr<const room::Brief>& brief) {
    constexpr int kRuns = 21;
    std::vector<double> times;
    for (int i = 0; i < kRuns; ++i)
        times.push_back(milliseconds_to_study(brief));
    const double first = times.front();
    std::sort(times.begin(), times.end());
    std::cerr << "studied in " << base::quantity_text(first / 1000.0, base::Unit::second)
              << " the first time, "
              << base::quantity_text(times[kRuns / 2] / 1000.0, base::Unit::second)
              << " in the median of " << kRuns << " runs from scratch\n";
}

int run_study(const StudyWords& words) {
    const auto study = sampled_study_file(words.file, words.no_crowd);
    if (!study) return refuse(study.problems());
    const auto format = choose_format(study->layout(), words.format);
    if (!format) return refuse(format.problems());
    if (words.time) print_time(study->brief);
    if (!words.json.empty()) return put_output(words.json, study::study_json(*study, *format));
    return put_output("-", study_text(*study, *format, unit_system(words.imperial)));
}

}  // namespace

void add_study_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("study", "Compute every figure of a room");
    auto words = std::make_shared<StudyWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--format", words->format, "Only this format");
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--time", words->time,
                   "Say on standard error how long the study takes, crowds left out");
    verb->add_flag("--imperial", words->imperial, "Feet, foot-lamberts (text only)");
    add_no_crowd(*verb, words->no_crowd);
    verb->callback([&choice, words] { choice.action = [words] { return run_study(*words); }; });
}

}  // namespace rakeline::command
