// SPDX-License-Identifier: MIT
#include "study/figure_values.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace rakeline::study {
namespace {

/// One value that misses or nearly misses a limit.
struct Hit {
    const Figure* figure = nullptr;
    int index = 0;
    double si = 0.0;
    double excess = 0.0;
    Verdict verdict = Verdict::near;
};

/// Findings gather values by limit, projector and format, so that 300 seats that miss the same
/// limit, or one loudspeaker after another, make one sentence.
using Key = std::tuple<int, int, int>;

struct Gathered {
    Hit worst;
    int missed = 0;
    int near = 0;
    int held = 0;
};

void add(Gathered& group, const Hit& hit) {
    if (hit.verdict == Verdict::missed) ++group.missed;
    if (hit.verdict == Verdict::near) ++group.near;
    if (!group.worst.figure || hit.excess > group.worst.excess) group.worst = hit;
}

/// The first limit that says the same for another band: one rule, one finding.
int rule_of(const std::vector<room::Limit>& limits, int limit) {
    const auto same_rule = [&](const room::Limit& a) {
        room::Limit b = limits.at(static_cast<std::size_t>(limit));
        b.band_hz = a.band_hz;
        return a == b;
    };
    return static_cast<int>(std::find_if(limits.begin(), limits.end(), same_rule) - limits.begin());
}

void gather_figure(const Study& study, const Figure& figure, std::map<Key, Gathered>& groups) {
    const auto& limits = study.brief->limits.limits;
    for (const int i : figure.limits) {
        const room::Limit& limit = limits.at(static_cast<std::size_t>(i));
        Gathered& group =
            groups[{rule_of(limits, i), figure.projector.value_or(-1), figure.format.value_or(-1)}];
        for (const Value& value : figure.values) {
            if (!applies_at(study, figure, i, value.index)) continue;
            const Verdict verdict = verdict_of(value.si, limit);
            if (verdict == Verdict::holds) {
                ++group.held;
            } else {
                add(group, {&figure, value.index, value.si, excess_of(value.si, limit), verdict});
            }
        }
    }
}

std::map<Key, Gathered> gather(const Study& study) {
    std::map<Key, Gathered> groups;
    for (const Figure& figure : study.figures)
        gather_figure(study, figure, groups);
    return groups;
}

void replace(std::string& text, const std::string& slot, const std::string& with) {
    for (auto at = text.find(slot); at != std::string::npos;
         at = text.find(slot, at + with.size())) {
        text.replace(at, slot.size(), with);
    }
}

std::string band_name(const Hit& hit) {
    if (!hit.figure->definition->per.band) return {};
    return base::quantity_text(band_frequency(*hit.figure, hit.index), base::Unit::hertz);
}

std::string sentence(const Study& study, const Hit& hit, base::UnitSystem system) {
    const Figure& f = *hit.figure;
    const room::Layout& layout = study.layout();
    std::string out = f.definition->sentence;
    const auto at = [](const auto& list, std::optional<int> i) {
        return i ? list.at(static_cast<std::size_t>(*i)).name : std::string();
    };
    const std::string along = index_name(study, *f.definition, hit.index);
    replace(out, "{value}", base::quantity_text(hit.si, f.definition->unit, system));
    replace(out, "{seat}", along);
    replace(out, "{row}", along);
    replace(out, "{band}", band_name(hit));
    replace(out, "{projector}", at(layout.projectors, f.projector));
    replace(out, "{format}", at(layout.formats, f.format));
    replace(out, "{loudspeaker}", at(layout.loudspeakers, f.loudspeaker));
    return out;
}

const char* thing_counted(const FigureDefinition& d) {
    switch (d.axis()) {
        case Axis::seat:
            return "seats";
        case Axis::row:
            return "rows";
        case Axis::band:
            return d.per.loudspeaker ? "loudspeaker bands" : "bands";
        case Axis::none:
            return "cases";
    }
    return "cases";
}

std::string how_many(const Gathered& group) {
    const bool missed = group.missed > 0;
    const int count = missed ? group.missed : group.near;
    const int all = group.missed + group.near + group.held;
    if (all <= 1) return {};
    return " (" + std::to_string(count) + " of " + std::to_string(all) + " " +
           thing_counted(*group.worst.figure->definition) + (missed ? ")" : " near)");
}

const char* authority_words(room::Authority authority) {
    switch (authority) {
        case room::Authority::standard:
            return "standard";
        case room::Authority::common_practice:
            return "common practice";
        case room::Authority::yours:
            return "yours";
    }
    return "";
}

/// "wanted 37.8 to 58.2 cd/m²", "wanted at most 3.0 dB".
std::string wanted(const room::Limit& limit, base::Unit unit, base::UnitSystem system) {
    const auto text = [&](double si) { return base::quantity_text(si, unit, system); };
    if (limit.least && limit.most) {
        return "wanted " + base::quantity(*limit.least, unit, system).number + " to " +
               text(*limit.most);
    }
    return limit.least ? "wanted at least " + text(*limit.least)
                       : "wanted at most " + text(*limit.most);
}

std::string against(const room::Limit& limit, base::Unit unit, base::UnitSystem system) {
    return wanted(limit, unit, system) + " · " + authority_words(limit.authority) + ": " +
           limit.source;
}

Place place_of(const Hit& hit) {
    const Figure& f = *hit.figure;
    Place place{.projector = f.projector,
                .format = f.format,
                .loudspeaker = f.loudspeaker,
                .seat = {},
                .row = {},
                .band = f.band};
    switch (f.definition->axis()) {
        case Axis::seat:
            place.seat = hit.index;
            break;
        case Axis::row:
            place.row = hit.index;
            break;
        case Axis::band:
            place.band = hit.index;
            break;
        case Axis::none:
            break;
    }
    return place;
}

Finding finding_of(const Study& study, const Gathered& group, const room::Limit& limit) {
    using base::UnitSystem;
    const FigureDefinition& d = *group.worst.figure->definition;
    const auto what = [&](UnitSystem system) {
        return sentence(study, group.worst, system) + how_many(group);
    };
    return {.verdict = group.missed > 0 ? Verdict::missed : Verdict::near,
            .subject = d.subject,
            .figure = d.id,
            .what = what(UnitSystem::metric),
            .against = against(limit, d.unit, UnitSystem::metric),
            .what_imperial = what(UnitSystem::imperial),
            .against_imperial = against(limit, d.unit, UnitSystem::imperial),
            .mend = limit.mend,
            .place = place_of(group.worst)};
}

/// A finding without quantities reads the same in both unit systems.
void add_plain(std::vector<Finding>& out, Finding finding) {
    finding.what_imperial = finding.what;
    finding.against_imperial = finding.against;
    out.push_back(std::move(finding));
}

void add_missing_pictures(const Study& study, std::vector<Finding>& out) {
    const room::Layout& layout = study.layout();
    for (const picture::NoPicture& none : study.picture.none) {
        const auto& projector = layout.projectors.at(static_cast<std::size_t>(none.projector));
        const auto& format = layout.formats.at(static_cast<std::size_t>(none.format));
        add_plain(out,
                  {.verdict = Verdict::missed,
                   .subject = Subject::picture,
                   .figure = {},
                   .what = projector.name + " gives no picture in " + format.name + ": " + none.why,
                   .against = "a picture is wanted in every format that a projector shows",
                   .mend = none.mend,
                   .place = {.projector = none.projector,
                             .format = none.format,
                             .loudspeaker = {},
                             .seat = {},
                             .row = {},
                             .band = {}}});
    }
}

/// A picture that falls short of its opening is found by its figures; a plate can be refused where
/// it covers too, for an allowance or a corner that leaves nothing to file.
void add_refused_plates(const Study& study, std::vector<Finding>& out) {
    const room::Layout& layout = study.layout();
    for (const picture::ProjectedPicture& p : study.picture.pictures) {
        if (!p.plate || *p.plate || !p.covering || !p.covering->covers()) continue;
        const auto& projector = layout.projectors.at(static_cast<std::size_t>(p.projector));
        const auto& format = layout.formats.at(static_cast<std::size_t>(p.format));
        const base::Problem& why = p.plate->problems().front();
        add_plain(out, {.verdict = Verdict::missed,
                        .subject = Subject::picture,
                        .figure = {},
                        .what = "No gate plate can be filed for " + projector.name + " in " +
                                format.name + ": " + why.what,
                        .against = "a plate is wanted for every format that a film projector shows",
                        .mend = why.mend,
                        .place = {.projector = p.projector,
                                  .format = p.format,
                                  .loudspeaker = {},
                                  .seat = {},
                                  .row = {},
                                  .band = {}}});
    }
}

void add_excess_reflectance(const Study& study, std::vector<Finding>& out) {
    const double reflectance = study.light.lobe_reflectance;
    const auto& limits = study.brief->limits.limits;
    const bool held_already = std::any_of(limits.begin(), limits.end(), [](const auto& limit) {
        return limit.figure == "light.screen_reflectance";
    });
    if (held_already || !(reflectance > 1.0)) return;
    add_plain(out, {.verdict = Verdict::missed,
                    .subject = Subject::light,
                    .figure = "light.screen_reflectance",
                    .what = "The screen surface as described would send back " +
                            base::quantity_text(reflectance, base::Unit::fraction) +
                            " of the light that arrives",
                    .against = "at most 100 % · conservation of energy",
                    .mend = "lower the peak gain, the matte part or the half-gain angle",
                    .place = {}});
}

}  // namespace

std::vector<Finding> collect_findings(const Study& study) {
    std::vector<Finding> out;
    add_missing_pictures(study, out);
    add_refused_plates(study, out);
    add_excess_reflectance(study, out);
    for (const auto& [key, group] : gather(study)) {
        if (group.missed + group.near == 0) continue;
        const auto& limit =
            study.brief->limits.limits.at(static_cast<std::size_t>(std::get<0>(key)));
        out.push_back(finding_of(study, group, limit));
    }
    std::stable_sort(out.begin(), out.end(), [](const Finding& a, const Finding& b) {
        return std::tuple(a.verdict != Verdict::missed, a.subject) <
               std::tuple(b.verdict != Verdict::missed, b.subject);
    });
    return out;
}

}  // namespace rakeline::study
