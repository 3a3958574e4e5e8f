// SPDX-License-Identifier: MIT
#include "study/width_json.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

Json stops_json(const Study& study, const std::vector<WidthStop>& stops) {
    Json out = Json::array();
    for (const WidthStop& stop : stops) {
        const room::Limit& limit =
            study.brief->limits.limits.at(static_cast<std::size_t>(stop.limit));
        const base::Unit unit = find_definition(limit.figure)->unit;
        Json seats = Json::array();
        for (const int seat : stop.seats)
            seats.push_back(study.seats.seats.at(static_cast<std::size_t>(seat)).name);
        out.push_back({{"figure", limit.figure},
                       {"bound", stop.least ? "least" : "most"},
                       {"value", base::json_value(stop.least ? *limit.least : *limit.most, unit)},
                       {"unit", base::json_unit(unit)},
                       {"source", limit.source},
                       {"seats", seats}});
    }
    return out;
}

Json advice_json(const Study& study, const WidthAdvice& a) {
    Json ranges = Json::array();
    for (const WidthRange& range : a.ranges)
        ranges.push_back({{"least_m", range.least_m},
                          {"most_m", range.most_m},
                          {"below", stops_json(study, range.below)},
                          {"above", stops_json(study, range.above)}});
    const auto& format = study.layout().formats.at(static_cast<std::size_t>(a.format));
    return {{"format", format.name},  {"share", a.share},
            {"wanted", a.wanted},     {"seats", a.seats},
            {"limits", a.limits},     {"now_m", a.now_m},
            {"kept_now", a.kept_now}, {"least_m", a.least_m},
            {"most_m", a.most_m},     {"why_most", a.why_most},
            {"ranges", ranges},       {"kept_best", a.kept_best},
            {"best_m", a.best_m},     {"missed_best", stops_json(study, a.missed_best)}};
}

}  // namespace

std::string width_json(const Study& study, std::span<const WidthAdvice> all) {
    Json out;
    out["room"] = study.layout().name;
    out["sill_m"] = study.layout().screen.sill_m;
    out["widths"] = Json::array();
    for (const WidthAdvice& advice : all)
        out["widths"].push_back(advice_json(study, advice));
    return out.dump(1) + "\n";
}

}  // namespace rakeline::study
