// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "command/verbs.hpp"
#include "study/width_json.hpp"
#include "study/width_words.hpp"

#include <algorithm>
#include <memory>

namespace rakeline::command {
namespace {

struct WidthWords {
    std::string file, format, json, share = "0.9";
    bool imperial = false;
};

/// "0.9" or "90 %".
base::Result<double> share_of(const std::string& text) {
    if (const auto number = base::parse_number(text)) return *number;
    return base::parse_quantity(text, base::Unit::fraction, base::UnitSystem::metric);
}

base::Problems in_words(base::Problems problems) {
    for (base::Problem& problem : problems)
        if (problem.where == "share" || problem.where.empty()) problem.where = "--share";
    return problems;
}

std::string text_of(const study::Study& study,
                    const std::vector<study::WidthAdvice>& all,
                    base::UnitSystem system) {
    std::string out = study.layout().name + ": picture widths\n";
    for (const study::WidthAdvice& advice : all) {
        out += "\n" + study::width_verdict(study, advice, system) + "\n";
        for (const std::string& reason : study::width_reasons(study, advice, system))
            out += "  " + reason + "\n";
    }
    return out + "\n" + study::width_scope(study, system) + "\n";
}

int widths(const WidthWords& words) {
    const auto share = share_of(words.share);
    if (!share) return refuse(in_words(share.problems()));
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto format = choose_format(study->layout(), words.format);
    if (!format) return refuse(format.problems());
    std::vector<study::WidthAdvice> all;
    for (int f = 0; f < static_cast<int>(study->layout().formats.size()); ++f) {
        if (format->value_or(f) != f) continue;
        auto advice = study::width_advice(*study, f, *share);
        if (!advice) return refuse(in_words(advice.problems()));
        all.push_back(std::move(*advice));
    }
    if (all.empty()) return refuse("the room has no format", "put one into the layout");
    const int put = words.json.empty()
                        ? put_output("-", text_of(*study, all, unit_system(words.imperial)))
                        : put_output(words.json, study::width_json(*study, all));
    if (put != kDone) return put;
    const bool every = std::all_of(all.begin(), all.end(),
                                   [](const auto& advice) { return !advice.ranges.empty(); });
    return every ? kDone : kLimitMissed;
}

}  // namespace

void add_width_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand(
        "width", "Find the widest and narrowest picture that keeps the limits on viewing angles");
    auto words = std::make_shared<WidthWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--format", words->format, "Format by name; else all");
    verb->add_option("--share", words->share, "Share of the seats that keep them, 0.9 or 90 %")
        ->capture_default_str();
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--imperial", words->imperial, "Feet (text only)");
    verb->callback([&choice, words] { choice.action = [words] { return widths(*words); }; });
}

}  // namespace rakeline::command
