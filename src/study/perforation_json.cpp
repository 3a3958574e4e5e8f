// SPDX-License-Identifier: MIT
#include "study/perforation_json.hpp"

#include "base/units.hpp"

#include <nlohmann/json.hpp>

#include <array>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<const char*, 4> kPatterns{"none", "square", "staggered", "woven"};

Json sheet_json(const SheetTrial& trial) {
    const room::Perforation& holes = trial.sheet.perforation;
    Json out;
    out["name"] = trial.sheet.name;
    out["pattern"] = kPatterns.at(static_cast<std::size_t>(holes.pattern));
    if (holes.pattern != room::PerforationPattern::none) {
        out["hole_diameter_m"] = holes.hole_diameter_m;
        out["pitch_m"] = holes.pitch_m;
        out["angle_deg"] = base::degrees(holes.angle_rad);
    }
    out["sheet_thickness_m"] = trial.sheet.thickness_m;
    out["sheet_mass_kg_m2"] = trial.sheet.mass_kg_m2;
    out["loss_10k_db"] = trial.loss_10k_db;
    out["open_area"] = trial.open_area;
    out["light_over_present"] = trial.light_over_present;
    if (trial.hole_minutes) out["hole_minutes"] = *trial.hole_minutes;
    if (trial.hole_seats) out["hole_seats"] = *trial.hole_seats;
    if (trial.beat) out["beat"] = *trial.beat;
    return out;
}

Json turn_json(const sound::TurnAdvice& turn) {
    Json trials = Json::array();
    for (const sound::TurnTrial& trial : turn.trials)
        trials.push_back(
            {{"angle_deg", base::degrees(trial.angle_rad)}, {"beat", trial.visibility}});
    return {{"now", turn.now}, {"best", turn.best}, {"trials", std::move(trials)}};
}

}  // namespace

std::string perforation_json(const Study& study, const SheetTrials& trials) {
    Json out;
    out["room"] = study.layout().name;
    out["sheets"] = Json::array();
    for (const SheetTrial& trial : trials.trials)
        out["sheets"].push_back(sheet_json(trial));
    if (trials.turn) out["turn"] = turn_json(*trials.turn);
    return out.dump(2) + "\n";
}

}  // namespace rakeline::study
