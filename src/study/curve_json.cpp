// SPDX-License-Identifier: MIT
#include "study/curve_json.hpp"

#include "base/units.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

Json trial_json(const Study& study, const light::CurvatureTrial& trial) {
    Json out;
    out["radius_m"] = trial.radius_m;
    out["sagitta"] = trial.sagitta_fraction;
    out["tilt_deg"] = base::degrees(trial.tilt_rad);
    out["clear_of_wall"] = trial.clear_of_wall;
    out["throw_m"] = trial.throw_m;
    out["side_ratio"] = trial.side_ratio;
    out["side_seat"] = study.seats.seats.at(static_cast<std::size_t>(trial.side_seat)).name;
    out["evenness"] = trial.evenness;
    out["lowest_cdm2"] = trial.lowest_cdm2;
    out["highest_cdm2"] = trial.highest_cdm2;
    out["crop"] = trial.crop;
    out["uncovered"] = trial.uncovered;
    out["bow_m"] = trial.bow_m;
    out["keystone_vertical"] = trial.keystone_vertical;
    return out;
}

Json trials_json(const Study& study, const std::vector<light::CurvatureTrial>& trials) {
    Json out = Json::array();
    for (const light::CurvatureTrial& trial : trials)
        out.push_back(trial_json(study, trial));
    return out;
}

}  // namespace

std::string curve_json(const Study& study,
                       int projector,
                       int format,
                       const light::CurvatureHelp& help) {
    const auto at = [](int i) { return static_cast<std::size_t>(i); };
    Json out;
    out["room"] = study.layout().name;
    out["projector"] = study.layout().projectors.at(at(projector)).name;
    out["format"] = study.layout().formats.at(at(format)).name;
    out["chord_m"] = help.chord_m;
    if (help.now) out["now"] = trial_json(study, *help.now);
    out["curves"] = trials_json(study, help.curves);
    out["tilts"] = trials_json(study, help.tilts);
    if (help.best_curve) out["best_curve"] = *help.best_curve;
    if (help.best_tilt) out["best_tilt"] = *help.best_tilt;
    return out.dump(2) + "\n";
}

}  // namespace rakeline::study
