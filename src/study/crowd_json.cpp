// SPDX-License-Identifier: MIT
#include "study/crowd_json.hpp"

#include "base/assert.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

Json chance_json(const sight::Chance& chance) {
    const sight::Interval interval = sight::wilson_interval(chance);
    Json out;
    out["chance"] = chance.share();
    out["low"] = interval.low;
    out["high"] = interval.high;
    out["clear"] = chance.clear;
    out["drawn"] = chance.drawn;
    return out;
}

Json format_json(const Study& study, int format) {
    const auto at = static_cast<std::size_t>(format);
    const sight::FormatCrowd& crowd = study.crowd->formats.at(at);
    Json out;
    out["format"] = study.layout().formats.at(at).name;
    if (crowd.seats.empty()) return out;
    out["every_seat"] = chance_json(crowd.room);
    if (const Figure* figure = find_figure(study, "sight.seats_clear", {.format = format}))
        out["seats_clear"] = value_at(*figure).value();
    out["seats"] = Json::object();
    for (std::size_t i = 0; i < crowd.seats.size(); ++i)
        out["seats"][study.seats.seats[i].name] = chance_json(crowd.seats[i]);
    return out;
}

}  // namespace

std::string crowd_json(const Study& study, std::optional<int> format) {
    RL_ASSERT(study.crowd);
    const room::Crowd& crowd = study.crowd->crowd;
    Json out;
    out["room"] = study.layout().name;
    out["crowds"] = study.crowd->drawn;
    out["seed"] = crowd.seed;
    out["women_fraction"] = crowd.women_fraction;
    out["taken_fraction"] = crowd.taken_fraction;
    out["precision"] = crowd.precision;
    out["precision_reached"] = study.crowd->reached;
    out["formats"] = Json::array();
    for (int f = 0; f < static_cast<int>(study.crowd->formats.size()); ++f) {
        if (!format || *format == f) out["formats"].push_back(format_json(study, f));
    }
    return out.dump(1) + "\n";
}

}  // namespace rakeline::study
