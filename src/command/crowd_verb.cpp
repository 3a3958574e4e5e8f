// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "command/crowd_text.hpp"
#include "command/sampled.hpp"
#include "command/verbs.hpp"
#include "study/crowd_json.hpp"

#include <memory>

namespace rakeline::command {
namespace {

struct CrowdWords {
    std::string file, format, taken, women, precision, json;
    std::optional<int> seed;
};

base::Problem at_word(const char* word, std::string what, std::string mend) {
    return {.file = {}, .line = 0, .where = word, .what = std::move(what), .mend = std::move(mend)};
}

/// A share in percent. A bare number between 0 and 1 might be meant either way, and is refused.
base::Problems read_share(const char* word, const std::string& text, double& into) {
    if (text.empty()) return {};
    const auto share = base::parse_quantity(text, base::Unit::fraction, base::UnitSystem::metric);
    if (!share) {
        base::Problems problems = share.problems();
        for (base::Problem& problem : problems)
            problem.where = word;
        return problems;
    }
    if (*share > 0.0 && *share < 0.01 && text.find('%') == std::string::npos) {
        return {at_word(word, "'" + text + "' may be a share or a percentage",
                        "shares are in percent here: give 70 for seven in ten, or add %")};
    }
    into = *share;
    return {};
}

/// The words over what the layout says.
base::Problems put_words(const CrowdWords& words, room::Layout& layout) {
    room::Crowd& crowd = layout.audience.crowd;
    base::Problems problems = read_share("--taken", words.taken, crowd.taken_fraction);
    for (auto& problem : read_share("--women", words.women, crowd.women_fraction))
        problems.push_back(std::move(problem));
    if (!words.precision.empty()) {
        const auto precision =
            base::parse_quantity(words.precision, base::Unit::fraction, base::UnitSystem::metric);
        if (precision) {
            crowd.precision = *precision;
        } else {
            problems.push_back(precision.problems().front());
            problems.back().where = "--precision";
        }
    }
    crowd.seed = words.seed.value_or(crowd.seed);
    if (!problems.empty()) return problems;
    return room::check_field_ranges(layout);
}

/// Names the word that set the field which is out of its range.
base::Problems in_words(base::Problems problems) {
    static constexpr std::pair<const char*, const char*> kWords[] = {
        {"audience.crowd.taken_fraction", "--taken"},
        {"audience.crowd.women_fraction", "--women"},
        {"audience.crowd.precision", "--precision"},
        {"audience.crowd.seed", "--seed"}};
    for (base::Problem& problem : problems) {
        for (const auto& [field, word] : kWords) {
            if (problem.where == field) problem.where = word;
        }
    }
    return problems;
}

int crowd(const CrowdWords& words) {
    auto brief = study::open_room(words.file, base::read_text_file);
    if (!brief) return refuse(brief.problems());
    const base::Problems problems = in_words(put_words(words, (*brief).layout));
    if (!problems.empty()) return refuse(problems);
    const auto format = choose_format(brief->layout, words.format);
    if (!format) return refuse(format.problems());
    study::Study studied =
        study::compute_study(std::make_shared<const room::Brief>(std::move(*brief)));
    if (studied.seats.seats.empty())
        return refuse("the room has no seats", "put a block of seats into the layout");
    const study::Study study = with_sampled_crowd(std::move(studied));
    if (!words.json.empty()) return put_output(words.json, study::crowd_json(study, *format));
    return put_output("-", crowd_text(study, *format));
}

}  // namespace

void add_crowd_verb(CLI::App& app, Choice& choice) {
    auto* verb =
        app.add_subcommand("crowd", "Chance of a clear view from every seat over random audiences");
    auto words = std::make_shared<CrowdWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--format", words->format, "Only this format");
    verb->add_option("--taken", words->taken, "Seats taken, in percent; else as the layout says");
    verb->add_option("--women", words->women, "Women, in percent; else as the layout says");
    verb->add_option("--seed", words->seed, "The same seed draws the same crowds");
    verb->add_option("--precision", words->precision,
                     "Wanted half width of every interval, in percent");
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->callback([&choice, words] { choice.action = [words] { return crowd(*words); }; });
}

}  // namespace rakeline::command
