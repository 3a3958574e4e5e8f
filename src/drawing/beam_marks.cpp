// SPDX-License-Identifier: MIT
#include "drawing/beam_marks.hpp"

#include <algorithm>

namespace rakeline::drawing {
namespace {

using study::Verdict;

struct Words {
    const char* figure;
    const char* part;   ///< "balcony"
    const char* where;  ///< "over the balcony"
};

Words words_of(BeamNear to, bool beam_over) {
    switch (to) {
        case BeamNear::floor:
            return {"picture.beam_clearance", "floor", "over the floor"};
        case BeamNear::balcony:
            return {"picture.balcony_clearance", "balcony",
                    beam_over ? "over the balcony" : "under the balcony"};
        case BeamNear::ceiling:
            return {"picture.ceiling_clearance", "ceiling", "under the ceiling"};
        case BeamNear::wall:
            return {"picture.wall_clearance", "side wall", "beside the wall"};
    }
    return {};
}

std::string text_of(const BeamMark& mark, const Words& words, base::UnitSystem units) {
    const auto length = [&](double si) {
        return base::quantity_text(si, base::Unit::metre, units);
    };
    std::string text =
        mark.distance_m < 0.0
            ? std::string(words.part) + " " + length(-mark.distance_m) + " into the beam"
            : "beam " + length(mark.distance_m) + " " + words.where;
    const std::string sign = study::verdict_mark(mark.verdict);
    return sign.empty() ? text : text + " " + sign;
}

void put(Drawing& out, auto item) {
    out.items.emplace_back(std::move(item));
}

Shows shown_by(const Chosen& chosen) {
    return showing(Shows::Kind::projector, chosen.projector);
}

Weight weight_of(const BeamMark& mark) {
    return mark.verdict == Verdict::missed ? Weight::cut : Weight::seen;
}

/// Feet: level strokes at both ends of an upright line.
void add_ends(glm::dvec2 a, glm::dvec2 b, const BeamMark& mark, const Chosen& c, Drawing& out) {
    constexpr double kHalf_m = 0.16;
    for (const glm::dvec2 end : {a, b})
        put(out, stroke(end - glm::dvec2(kHalf_m, 0.0), end + glm::dvec2(kHalf_m, 0.0),
                        weight_of(mark), verdict_ink(mark.verdict), shown_by(c)));
}

/// Somebody who stands there: head and a line down to the floor.
void add_standing_person(const study::Study& study, glm::dvec2 floor, Drawing& out) {
    const double crown = study.layout().audience.standing_height_m;
    constexpr double kHead_m = 0.11;
    const glm::dvec2 at = floor + glm::dvec2(0.42, 0.0);
    put(out, stroke(at, at + glm::dvec2(0.0, crown - 2.0 * kHead_m), Weight::helper, Ink::line));
    put(out, Line{.points = disc(at + glm::dvec2(0.0, crown - kHead_m), kHead_m),
                  .weight = Weight::helper,
                  .ink = Ink::line,
                  .closed = true});
}

bool on_this_level(const study::Study& study, const DrawingChoice& choice, const BeamMark& mark) {
    if (!choice.raised) return true;
    if (mark.to == BeamNear::balcony) return *choice.raised;
    const bool raised =
        mark.block && study.layout().seating.at(static_cast<std::size_t>(*mark.block)).raised;
    return mark.to != BeamNear::floor || raised == *choice.raised;
}

std::optional<geometry::Rectangle> needed(const study::Study& study, const Chosen& chosen) {
    if (chosen.projector < 0) return std::nullopt;
    return picture::port_opening(study.picture, chosen.projector);
}

/// A stroke along the wall with a short one across it at each end.
void add_opening(
    const study::Study& study, const Chosen& chosen, glm::dvec2 from, glm::dvec2 to, Drawing& out) {
    const Verdict verdict = verdict_of(study, chosen, "picture.port_margin");
    const Ink ink = verdict == Verdict::no_limit ? Ink::beam : verdict_ink(verdict);
    const glm::dvec2 along = glm::normalize(to - from);
    const glm::dvec2 across = 0.14 * glm::dvec2(-along.y, along.x);
    put(out, stroke(from, to, Weight::seen, ink, shown_by(chosen)));
    for (const glm::dvec2 end : {from, to})
        put(out, stroke(end - across, end + across, Weight::seen, ink, shown_by(chosen)));
}

}  // namespace

Verdict verdict_of(const study::Study& study, const Chosen& chosen, const char* id) {
    study::Place place;
    if (chosen.projector >= 0) place.projector = chosen.projector;
    if (chosen.format >= 0) place.format = chosen.format;
    const study::Figure* figure = study::find_figure(study, id, place);
    return figure ? figure->worst : Verdict::no_limit;
}

std::vector<BeamMark> beam_marks(const study::Study& study,
                                 const Chosen& chosen,
                                 base::UnitSystem units) {
    std::vector<BeamMark> marks;
    if (!chosen.picture) return marks;
    const auto add = [&](BeamMark mark, bool beam_over) {
        const Words words = words_of(mark.to, beam_over);
        mark.verdict = std::max(mark.verdict, verdict_of(study, chosen, words.figure));
        mark.text = text_of(mark, words, units);
        marks.push_back(std::move(mark));
    };
    const picture::ProjectedPicture& p = *chosen.picture;
    if (p.beam) {
        const glm::dvec3 floor = p.beam->floor_point;
        add({.to = BeamNear::floor,
             .part = floor,
             .beam = floor + glm::dvec3(0.0, p.beam->height_m, 0.0),
             .distance_m = p.beam->height_m,
             .verdict = verdict_of(study, chosen, "picture.head_clearance"),
             .block = p.beam->block,
             .text = {}},
            true);
    }
    const auto add_gap = [&](BeamNear to, const std::optional<picture::BeamGap>& gap) {
        if (!gap) return;
        add({.to = to,
             .part = gap->part_point,
             .beam = gap->beam_point,
             .distance_m = gap->distance_m,
             .block = {},
             .text = {}},
            gap->beam_over);
    };
    add_gap(BeamNear::balcony, p.gaps.balcony);
    add_gap(BeamNear::ceiling, p.gaps.ceiling);
    add_gap(BeamNear::wall, p.gaps.wall);
    std::erase_if(marks, [](const BeamMark& mark) {
        const bool calm = mark.verdict == Verdict::holds || mark.verdict == Verdict::no_limit;
        return calm && (mark.to == BeamNear::ceiling || mark.to == BeamNear::wall);
    });
    return marks;
}

void add_section_beam_marks(const study::Study& study,
                            const DrawingChoice& choice,
                            const Chosen& chosen,
                            Drawing& out) {
    for (const BeamMark& mark : beam_marks(study, chosen, choice.units)) {
        if (mark.to == BeamNear::wall) continue;
        const glm::dvec2 part{mark.part.z, mark.part.y};
        const glm::dvec2 beam{mark.beam.z, mark.beam.y};
        put(out, stroke(part, beam, weight_of(mark), verdict_ink(mark.verdict), shown_by(chosen)));
        add_ends(part, beam, mark, chosen, out);
        if (mark.to == BeamNear::floor) add_standing_person(study, part, out);
        // On the screen's side, where no row stands higher.
        put(out, Label{.at = 0.35 * part + 0.65 * beam - glm::dvec2(0.22, 0.0),
                       .text = mark.text,
                       .anchor = Anchor::right,
                       .ink = verdict_ink(mark.verdict),
                       .shows = shown_by(chosen)});
    }
}

void add_plan_beam_marks(const study::Study& study,
                         const DrawingChoice& choice,
                         const Chosen& chosen,
                         Drawing& out) {
    constexpr double kHalf_m = 0.22;
    for (const BeamMark& mark : beam_marks(study, chosen, choice.units)) {
        if (!on_this_level(study, choice, mark)) continue;
        const Ink ink = verdict_ink(mark.verdict);
        const glm::dvec2 at{mark.part.x, mark.part.z};
        const glm::dvec2 beam{mark.beam.x, mark.beam.z};
        if (mark.to == BeamNear::wall)
            put(out, stroke(at, beam, weight_of(mark), ink, shown_by(chosen)));
        put(out, Line{.points = {at + glm::dvec2(0.0, -kHalf_m), at + glm::dvec2(kHalf_m, 0.0),
                                 at + glm::dvec2(0.0, kHalf_m), at + glm::dvec2(-kHalf_m, 0.0)},
                      .weight = weight_of(mark),
                      .ink = ink,
                      .closed = true,
                      .shows = shown_by(chosen)});
        if (mark.verdict != Verdict::missed && mark.verdict != Verdict::near) continue;
        const double side = at.x > 0.0 ? -1.0 : 1.0;  // toward the middle of the sheet
        put(out, Label{.at = at + glm::dvec2(side * 1.5 * kHalf_m, 0.0),
                       .text = mark.text,
                       .anchor = side > 0.0 ? Anchor::left : Anchor::right,
                       .ink = ink,
                       .shows = shown_by(chosen)});
    }
}

void add_section_port_needed(const study::Study& study, const Chosen& chosen, Drawing& out) {
    const auto opening = needed(study, chosen);
    if (!opening) return;
    const double z = study.layout().hall.length_m;
    add_opening(study, chosen, {z, opening->bottom}, {z, opening->top}, out);
}

void add_plan_port_needed(const study::Study& study, const Chosen& chosen, Drawing& out) {
    const auto opening = needed(study, chosen);
    if (!opening) return;
    const double z = study.layout().hall.length_m;
    add_opening(study, chosen, {opening->left, z}, {opening->right, z}, out);
}

}  // namespace rakeline::drawing
