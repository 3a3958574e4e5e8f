// SPDX-License-Identifier: MIT
#include "study/meter_json.hpp"

#include "study/meter_words.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::array<const char*, light::kLawParts> kPartIds{"flux", "corner_fraction",
                                                             "hot_spot_across", "hot_spot_up"};

Json part_json(const MeterCheck& check, light::LawPart which) {
    const light::FittedPart& part = check.fit.part(which);
    Json out;
    out["part"] = kPartIds.at(static_cast<std::size_t>(which));
    out["unit"] = base::json_unit(meter_part_unit(which));
    out["value"] = part.value;
    out["layout_value"] = part.layout_value;
    out["state"] = meter_state_name(part.state);
    if (part.error) out["standard_error"] = *part.error;
    return out;
}

Json reading_json(const Study& study, const MeterCheck& check, std::size_t i) {
    const MeterPlace& place = check.places.at(i);
    const light::FittedReading& reading = check.fit.readings.at(i);
    Json out;
    if (place.row.line > 0) out["line"] = place.row.line;
    if (place.row.point) {
        out["point"] = meter_point_name(*place.row.point);
    } else {
        out["across_m"] = place.row.place_m.x;
        out["up_m"] = place.row.place_m.y;
    }
    if (place.seat) out["seat"] = study.seats.seats.at(static_cast<std::size_t>(*place.seat)).name;
    out["spot_deg"] = base::degrees(place.row.spot_rad);
    out["unit"] = base::json_unit(place.row.unit);
    out["value"] = reading.read;
    out["fitted"] = reading.fitted;
    out["residual"] = reading.residual();
    out["standard_uncertainty"] = reading.error;
    out["masked_fraction"] = reading.dark_share;
    return out;
}

void put_names(const Study& study, const MeterSubject& subject, Json& out) {
    const room::Layout& layout = study.layout();
    out["room"] = layout.name;
    out["projector"] = layout.projectors.at(static_cast<std::size_t>(subject.projector)).name;
    out["format"] = layout.formats.at(static_cast<std::size_t>(subject.format)).name;
    if (subject.seat)
        out["seat"] = study.seats.seats.at(static_cast<std::size_t>(*subject.seat)).name;
}

}  // namespace

std::string meter_json(const Study& study, const MeterCheck& check) {
    Json out;
    put_names(study, check.subject, out);
    for (int part = 0; part < light::kLawParts; ++part)
        out["parts"].push_back(part_json(check, static_cast<light::LawPart>(part)));
    out["correlation"] = check.fit.correlation;
    for (std::size_t i = 0; i < check.places.size(); ++i)
        out["readings"].push_back(reading_json(study, check, i));
    out["chi_square"] = check.fit.chi_square;
    out["freedom"] = check.fit.freedom;
    if (check.fit.chance) out["chance"] = *check.fit.chance;
    out["signs"] = Json::array();
    for (const light::MeterSign sign : check.signs)
        out["signs"].push_back(meter_sign_name(sign));
    const auto metric = base::UnitSystem::metric;
    out["notes"] = meter_notes(check, metric);
    out["advice"] = meter_advice(study, check, metric);
    out["cautions"] = meter_cautions(study, check);
    return out.dump(1) + "\n";
}

}  // namespace rakeline::study
