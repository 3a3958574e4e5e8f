// SPDX-License-Identifier: MIT
#include "command/rake_text.hpp"
#include "command/verbs.hpp"
#include "sight/aisle_steps.hpp"
#include "study/rake_json.hpp"

#include <iostream>
#include <memory>

namespace rakeline::command {
namespace {

using base::Unit;

struct RakeWords {
    std::string file, block, json, output;
    std::string c, riser_step, riser_most, slope_most, headroom, beam_headroom, step_most;
    std::optional<int> flight_rows, flights_most;
    bool second_row = false, sill = false, spacing = false, imperial = false, force = false;
};

/// What is asked, its words read.
struct Asked {
    int block = 0;
    sight::RakeOptions options;
    double step_most_m = sight::kAisleStepMost_m;
};

/// Words of the command line for the members that option faults name.
const char* word_of(const std::string& option) {
    static constexpr std::pair<const char*, const char*> kWords[] = {
        {"wanted_c_m", "--c"},
        {"riser_step_m", "--riser-step"},
        {"flight_rows", "--flight"},
        {"flights_most", "--flights-most"},
        {"riser_most_m", "--riser-most"},
        {"slope_most_rad", "--slope-most"},
        {"headroom_m", "--headroom"},
        {"beam_headroom_m", "--beam-headroom"}};
    for (const auto& [member, word] : kWords) {
        if (option == member) return word;
    }
    return nullptr;
}

base::Problems in_words(base::Problems problems) {
    for (base::Problem& problem : problems) {
        if (const char* word = word_of(problem.where)) problem.where = word;
    }
    return problems;
}

/// Reads quantities that were given, and keeps what is wrong with them.
class QuantityReader {
public:
    explicit QuantityReader(base::UnitSystem system) : system_(system) {}

    template <class Target>
    void read(const char* word, const std::string& text, Unit unit, Target& target) {
        if (text.empty()) return;
        const auto value = base::parse_quantity(text, unit, system_);
        if (value) {
            target = *value;
            return;
        }
        for (base::Problem problem : value.problems()) {
            problem.where = word;
            problems.push_back(std::move(problem));
        }
    }
    base::Problems problems;

private:
    base::UnitSystem system_;
};

/// The block named, or the only one.
base::Result<int> choose_block(const room::Layout& layout, const std::string& name) {
    if (name.empty() && layout.seating.size() == 1) return 0;
    std::string all;
    for (std::size_t i = 0; i < layout.seating.size(); ++i) {
        if (!name.empty() && layout.seating[i].name == name) return static_cast<int>(i);
        all += (i ? ", '" : "'") + layout.seating[i].name + "'";
    }
    return base::Problem{
        .file = {},
        .line = 0,
        .where = {},
        .what = name.empty() ? "the room has " + std::to_string(layout.seating.size()) + " blocks"
                             : "there is no block '" + name + "'",
        .mend = all.empty() ? "put a block into the layout" : "name one with --block: " + all};
}

base::Result<Asked> asked_of(const study::Study& study, const RakeWords& words) {
    const auto block = choose_block(study.layout(), words.block);
    if (!block) return block.problems();
    const base::UnitSystem system = unit_system(words.imperial);
    Asked out;
    out.block = *block;
    sight::RakeOptions& o = out.options;
    o = study::rake_options(study, *block, system);
    if (words.second_row) o.over = sight::RakeOver::second_row;
    o.flight_rows = words.flight_rows.value_or(o.flight_rows);
    o.flights_most = words.flights_most;
    QuantityReader in(system);
    in.read("--c", words.c, Unit::millimetre, o.wanted_c_m);
    in.read("--riser-step", words.riser_step, Unit::millimetre, o.riser_step_m);
    in.read("--riser-most", words.riser_most, Unit::millimetre, o.riser_most_m);
    in.read("--slope-most", words.slope_most, Unit::radian, o.slope_most_rad);
    in.read("--headroom", words.headroom, Unit::metre, o.headroom_m);
    in.read("--beam-headroom", words.beam_headroom, Unit::metre, o.beam_headroom_m);
    in.read("--step-most", words.step_most, Unit::millimetre, out.step_most_m);
    if (!(out.step_most_m >= 0.05 && out.step_most_m <= 0.5)) {
        in.problems.push_back({.file = {},
                               .line = 0,
                               .where = "--step-most",
                               .what = "the greatest step in an aisle is out of range",
                               .mend = "give 50 mm to 500 mm"});
    }
    if (!in.problems.empty()) return in.problems;
    return out;
}

int put_made(const base::Result<room::Layout>& made, const RakeWords& words) {
    return made ? put_layout(*made, words.file, words.output) : refuse(made.problems());
}

/// The answer in text or JSON, after the layout, so that a refusal leaves both unwritten.
int put_answer(const RakeWords& words, const std::string& text, const std::string& json) {
    return words.json.empty() ? put_output("-", text) : put_output(words.json, json);
}

int rake_floor(const study::Study& study, const RakeWords& words, const Asked& asked) {
    const auto plan = study::rake_plan(study, asked.block, asked.options);
    if (!plan) return refuse(in_words(plan.problems()));
    if (!words.output.empty() && plan->buildable()) {
        const int put = put_made(
            study::raked_layout(study.layout(), asked.block, plan->built().floor_m), words);
        if (put != kDone) return put;
    }
    const int put =
        put_answer(words,
                   rake_text(study.layout(), asked.block, *plan, asked.step_most_m,
                             unit_system(words.imperial)),
                   study::rake_json({study.layout(), asked.block, asked.step_most_m}, *plan));
    if (put != kDone) return put;
    return plan->built().meets ? kDone : kLimitMissed;
}

int find_sill(const study::Study& study, const RakeWords& words, const Asked& asked) {
    const auto found = study::sill_for_floor(study, asked.block, asked.options);
    if (!found) return refuse(in_words(found.problems()));
    const auto rows = study::rake_rows_of(study, asked.block, asked.options.over);
    if (!rows) return refuse(rows.problems());
    if (*found && !words.output.empty()) {
        const int put = put_made(study::with_sill(study.layout(), (*found)->value_m), words);
        if (put != kDone) return put;
    }
    return put_answer(
        words, sill_text(study.layout(), asked.options, *found, *rows, unit_system(words.imperial)),
        study::sill_json({study.layout(), asked.block, asked.step_most_m}, asked.options, *found,
                         *rows));
}

int find_spacing(const study::Study& study, const RakeWords& words, const Asked& asked) {
    const auto found = study::spacing_for_floor(study, asked.block, asked.options);
    if (!found) return refuse(in_words(found.problems()));
    const auto rows = study::rake_rows_of(study, asked.block, asked.options.over);
    if (!rows) return refuse(rows.problems());
    if (*found && !words.output.empty()) {
        const int put = put_made(
            study::with_spacing(study.layout(), asked.block, (*found)->least.value_m), words);
        if (put != kDone) return put;
    }
    const int put = put_answer(
        words,
        spacing_text(study.layout(), asked.options, *found, *rows, unit_system(words.imperial)),
        study::spacing_json({study.layout(), asked.block, asked.step_most_m}, asked.options, *found,
                            *rows));
    if (put != kDone) return put;
    return *found ? kDone : kLimitMissed;
}

int rake(const RakeWords& words) {
    if (words.sill && words.spacing)
        return refuse("--sill and --spacing ask two things", "ask one at a time");
    if (!words.output.empty() && !words.force && same_file(words.file, words.output)) {
        return refuse("-o names the layout that is read",
                      "name a new file, or add --force to write over it");
    }
    const auto study = study_file(words.file);
    if (!study) return refuse(study.problems());
    const auto asked = asked_of(*study, words);
    if (!asked) return refuse(asked.problems());
    if (words.sill) return find_sill(*study, words, *asked);
    return words.spacing ? find_spacing(*study, words, *asked) : rake_floor(*study, words, *asked);
}

void add_lengths(CLI::App& verb, RakeWords& words) {
    verb.add_option("--c", words.c, "Wanted C, such as 120 mm or 4.72 in; else the block's own");
    verb.add_option("--riser-step", words.riser_step,
                    "Risers are whole multiples of this; else 10 mm, or 1/2 in with --imperial");
    verb.add_option("--riser-most", words.riser_most, "Greatest riser of a row");
    verb.add_option("--slope-most", words.slope_most,
                    "Greatest slope of a row over the one in front, in degrees");
    verb.add_option("--headroom", words.headroom,
                    "From floor to ceiling or balcony; else a standing person and 0.3 m");
    verb.add_option("--beam-headroom", words.beam_headroom,
                    "From floor to the beam; else a seated person; the first row is not judged");
    verb.add_option("--step-most", words.step_most,
                    "Greatest riser of one step in an aisle; else 203 mm (8 in)");
}

}  // namespace

void add_rake_verb(CLI::App& app, Choice& choice) {
    auto* verb = app.add_subcommand("rake", "Solve a block's floor for a wanted C");
    auto words = std::make_shared<RakeWords>();
    verb->add_option("FILE", words->file, "Layout file")->required();
    verb->add_option("--block", words->block, "Block by name; may be left out where there is one");
    verb->add_flag("--second-row", words->second_row,
                   "Clear the row two ahead and look between the heads of the next");
    verb->add_option("--flight", words->flight_rows, "Rows that share a riser, at least");
    verb->add_option("--flights-most", words->flights_most, "Flights of one riser, at most");
    add_lengths(*verb, *words);
    verb->add_flag("--sill", words->sill, "Find the lowest sill for the floor as it is");
    verb->add_flag("--spacing", words->spacing, "Find the row spacings for the floor as it is");
    verb->add_option("--json", words->json, "As JSON: to a file, or - for standard output");
    verb->add_flag("--imperial", words->imperial, "Feet and inches; bare numbers too");
    verb->add_option("-o", words->output, "Layout to write, with the floor, sill or spacing found");
    verb->add_flag("--force", words->force, "Write over the layout that is read");
    verb->callback([&choice, words] { choice.action = [words] { return rake(*words); }; });
}

}  // namespace rakeline::command
