// SPDX-License-Identifier: MIT
#include "study/study_json.hpp"

#include <nlohmann/json.hpp>

namespace rakeline::study {
namespace {

using Json = nlohmann::ordered_json;

const char* authority_name(room::Authority authority) {
    switch (authority) {
        case room::Authority::standard:
            return "standard";
        case room::Authority::common_practice:
            return "common_practice";
        case room::Authority::yours:
            return "yours";
    }
    return "";
}

Json limit_json(const room::Limit& limit, base::Unit unit) {
    static constexpr const char* scopes[] = {"every", "first_row", "last_row", "reference_seat",
                                             "screen_channels"};
    Json out;
    if (limit.least) out["least"] = base::json_value(*limit.least, unit);
    if (limit.most) out["most"] = base::json_value(*limit.most, unit);
    out["scope"] = scopes[static_cast<int>(limit.scope)];
    if (limit.band_hz) out["band_hz"] = *limit.band_hz;
    out["authority"] = authority_name(limit.authority);
    out["source"] = limit.source;
    return out;
}

template <class List>
std::string name_at(const List& list, int index) {
    return list.at(static_cast<std::size_t>(index)).name;
}

void put_values(const Study& study, const Figure& figure, Json& out) {
    const FigureDefinition& d = *figure.definition;
    if (d.axis() == Axis::none) {
        out["value"] = base::json_value(figure.values.front().si, d.unit);
        return;
    }
    Json values = Json::object();
    for (const Value& value : figure.values) {
        values[index_name(study, d, value.index)] = base::json_value(value.si, d.unit);
    }
    out["values"] = std::move(values);
}

Json figure_json(const Study& study, const Figure& figure) {
    const FigureDefinition& d = *figure.definition;
    const room::Layout& layout = study.layout();
    Json out;
    out["id"] = d.id;
    out["subject"] = subject_name(d.subject);
    out["unit"] = base::json_unit(d.unit);
    if (figure.projector) out["projector"] = name_at(layout.projectors, *figure.projector);
    if (figure.format) out["format"] = name_at(layout.formats, *figure.format);
    if (figure.loudspeaker) out["loudspeaker"] = name_at(layout.loudspeakers, *figure.loudspeaker);
    if (figure.band) out["band_hz"] = sound::kOctaves.at(static_cast<std::size_t>(*figure.band));
    put_values(study, figure, out);
    if (figure.limits.empty()) return out;
    const auto limit = [&](int i) {
        return limit_json(study.brief->limits.limits.at(static_cast<std::size_t>(i)), d.unit);
    };
    out["limit"] = limit(figure.limits.front());
    if (figure.limits.size() > 1) {
        for (const int i : figure.limits)
            out["limits"].push_back(limit(i));
    }
    out["holds"] = figure.worst != Verdict::missed;
    return out;
}

Json finding_json(const Study& study, const Finding& finding) {
    const room::Layout& layout = study.layout();
    Json out;
    out["verdict"] = finding.verdict == Verdict::missed ? "missed" : "near";
    out["subject"] = subject_name(finding.subject);
    if (!finding.figure.empty()) out["figure"] = finding.figure;
    out["what"] = finding.what;
    out["against"] = finding.against;
    out["mend"] = finding.mend;
    const Place& place = finding.place;
    if (place.projector) out["projector"] = name_at(layout.projectors, *place.projector);
    if (place.format) out["format"] = name_at(layout.formats, *place.format);
    if (place.loudspeaker) out["loudspeaker"] = name_at(layout.loudspeakers, *place.loudspeaker);
    if (place.seat) out["seat"] = name_at(study.seats.seats, *place.seat);
    if (place.row) out["row"] = study.seats.rows.at(static_cast<std::size_t>(*place.row)).letter;
    return out;
}

/// Null where no crowd was drawn: the figures of the crowd are not there then.
Json crowd_json(const Study& study) {
    if (!study.crowd) return nullptr;
    const room::Crowd& crowd = study.crowd->crowd;
    Json out;
    out["drawn"] = study.crowd->drawn;
    out["seed"] = crowd.seed;
    out["women_fraction"] = crowd.women_fraction;
    out["taken_fraction"] = crowd.taken_fraction;
    out["precision"] = crowd.precision;
    out["precision_reached"] = study.crowd->reached;
    return out;
}

bool wanted(const std::optional<int>& has, const std::optional<int>& format) {
    return !format || !has || *has == *format;
}

Json per_json(const Per& per) {
    Json out = Json::array();
    if (per.projector) out.push_back("projector");
    if (per.format) out.push_back("format");
    if (per.loudspeaker) out.push_back("loudspeaker");
    if (per.band) out.push_back("band");
    if (per.seat) out.push_back("seat");
    if (per.row) out.push_back("row");
    return out;
}

}  // namespace

std::string study_json(const Study& study, std::optional<int> format) {
    Json out;
    out["room"] = study.layout().name;
    out["limits"] = study.brief->limits.name;
    out["crowd"] = crowd_json(study);
    out["figures"] = Json::array();
    for (const Figure& figure : study.figures) {
        if (wanted(figure.format, format)) out["figures"].push_back(figure_json(study, figure));
    }
    out["findings"] = Json::array();
    for (const Finding& finding : study.findings) {
        if (wanted(finding.place.format, format)) {
            out["findings"].push_back(finding_json(study, finding));
        }
    }
    return out.dump(1) + "\n";
}

std::string register_json() {
    Json out = Json::array();
    for (const FigureDefinition& d : figure_register()) {
        Json entry;
        entry["id"] = d.id;
        entry["subject"] = subject_name(d.subject);
        entry["label"] = d.label;
        entry["unit"] = base::json_unit(d.unit);
        entry["per"] = per_json(d.per);
        entry["meaning"] = d.meaning;
        entry["formula"] = d.formula;
        entry["source"] = d.source;
        out.push_back(std::move(entry));
    }
    return out.dump(1) + "\n";
}

}  // namespace rakeline::study
