// SPDX-License-Identifier: MIT
#include "study/rake_json.hpp"

#include "sight/aisle_steps.hpp"
#include "study/rake_words.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

std::size_t index(int i) {
    return static_cast<std::size_t>(i);
}

Json head(const RakeSubject& subject, const sight::RakeOptions& options) {
    Json out;
    out["room"] = subject.layout.name;
    out["block"] = subject.layout.seating.at(index(subject.block)).name;
    out["wanted_c_m"] = options.wanted_c_m;
    out["over"] = options.over == sight::RakeOver::row_in_front ? "row_in_front" : "second_row";
    return out;
}

Json stage_json(const sight::RakePlan& plan, const sight::RakeStage& stage) {
    Json out;
    out["restriction"] = sight::restriction_name(stage.restriction);
    out["meets"] = stage.meets;
    if (stage.floor_m.empty()) return out;
    out["rise_m"] = stage.rise_m();
    if (stage.least_row) {
        out["least_row"] = plan.rows.rows.at(index(*stage.least_row)).letter;
        out["least_c_m"] = stage.sights.at(index(*stage.least_row))->c_m;
        out["short_by_m"] = std::max(0.0, -stage.spare_m(plan.options.wanted_c_m));
    }
    out["c_m"] = Json::array();
    for (const auto& sight : stage.sights)
        out["c_m"].push_back(sight ? Json(sight->c_m) : Json());
    return out;
}

void put_built(const RakeSubject& subject, const sight::RakePlan& plan, std::size_t n, Json& out) {
    const sight::RakeStage& built = plan.built();
    if (built.floor_m.empty()) return;
    out["floor_m"] = built.floor_m[n];
    if (built.sights[n]) out["c_m"] = built.sights[n]->c_m;
    if (n == 0) return;
    const double riser = built.floor_m[n] - built.floor_m[n - 1];
    out["riser_m"] = riser;
    const auto steps = sight::aisle_steps(riser, plan.rows.rows[n].spacing_m, subject.step_most_m);
    out["aisle_steps"] = steps.count;
    out["aisle_step_riser_m"] = steps.riser_m;
}

Json row_json(const RakeSubject& subject, const sight::RakePlan& plan, std::size_t n) {
    const sight::RakeRow& row = plan.rows.rows[n];
    const auto& exact = plan.stages.front();
    Json out;
    out["row"] = row.letter;
    out["spacing_m"] = row.spacing_m;
    if (exact.sights[n])
        out["wanted_c_m"] = exact.sights[n]->wanted_share * plan.options.wanted_c_m;
    if (n > 0) out["exact_riser_m"] = exact.floor_m[n] - exact.floor_m[n - 1];
    put_built(subject, plan, n, out);
    out["ceiling_m"] = row.ceiling_m;
    if (row.beam_m) out["beam_m"] = *row.beam_m;
    return out;
}

void put_decider(const RakeSubject& subject,
                 const sight::RakeRows& rows,
                 const sight::ReverseRake& found,
                 Json& out) {
    out["row"] = rows.rows.at(index(found.row)).letter;
    out["format"] = subject.layout.formats.at(index(found.format)).name;
}

Json end_json(const RakeSubject& subject,
              const sight::RakeRows& rows,
              const sight::ReverseRake& found,
              bool undecided) {
    Json out;
    out["spacing_m"] = found.value_m;
    if (!undecided) put_decider(subject, rows, found, out);
    return out;
}

std::string text_of(const Json& json) {
    return json.dump(1) + "\n";
}

}  // namespace

std::string rake_json(const RakeSubject& subject, const sight::RakePlan& plan) {
    Json out = head(subject, plan.options);
    out["meets"] = plan.built().meets;
    out["verdict"] = rake_verdict(plan, base::UnitSystem::metric);
    out["stages"] = Json::array();
    for (const sight::RakeStage& stage : plan.stages)
        out["stages"].push_back(stage_json(plan, stage));
    out["rows"] = Json::array();
    for (std::size_t n = 0; n < plan.rows.rows.size(); ++n)
        out["rows"].push_back(row_json(subject, plan, n));
    out["cautions"] = rake_cautions(plan, subject.step_most_m, base::UnitSystem::metric);
    return text_of(out);
}

std::string sill_json(const RakeSubject& subject,
                      const sight::RakeOptions& options,
                      const std::optional<sight::ReverseRake>& found,
                      const sight::RakeRows& rows) {
    Json out = head(subject, options);
    if (found) {
        out["sill_m"] = found->value_m;
        put_decider(subject, rows, *found, out);
    }
    return text_of(out);
}

std::string spacing_json(const RakeSubject& subject,
                         const sight::RakeOptions& options,
                         const std::optional<sight::SpacingRange>& found,
                         const sight::RakeRows& rows) {
    Json out = head(subject, options);
    if (found) {
        out["least"] = end_json(subject, rows, found->least, found->from_bottom);
        out["greatest"] = end_json(subject, rows, found->greatest, found->to_top);
    }
    return text_of(out);
}

}  // namespace rakeline::study
