// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include <vector>

/// The figures on what the beam comes near on its way through the hall.
namespace rakeline::study {
namespace {

using base::Unit;
using picture::BeamGap;
using picture::BeamGaps;
using picture::ProjectedPicture;

const ProjectedPicture* picture_of(const Cell& c) {
    return picture::find_picture(c.study.picture, c.projector, c.format);
}

std::optional<double> beam_clearance(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p || !p->beam) return std::nullopt;
    w.input("x", "place across", p->beam->floor_point.x, Unit::metre);
    w.input("z", "place back", p->beam->floor_point.z, Unit::metre);
    w.input("y", "floor there", p->beam->floor_point.y, Unit::metre);
    return p->beam->height_m;
}

std::optional<double> head_clearance(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p || !p->beam) return std::nullopt;
    const double beam = w.input("h_beam", "least height of the beam over the floor",
                                p->beam->height_m, Unit::metre);
    const double crown = w.input("h_crown", "crown of a standing person",
                                 c.study.layout().audience.standing_height_m, Unit::metre);
    return beam - crown;
}

/// A gap with its place, and what is measured up to in `part`.
std::optional<double> gap_at(const Cell& c,
                             Working& w,
                             std::optional<BeamGap> BeamGaps::*which,
                             const char* part) {
    const ProjectedPicture* p = picture_of(c);
    if (!p || !(p->gaps.*which)) return std::nullopt;
    const BeamGap& gap = *(p->gaps.*which);
    w.input("x", "beam there, across", gap.beam_point.x, Unit::metre);
    w.input("y", "beam there, up", gap.beam_point.y, Unit::metre);
    w.input("z", "beam there, back", gap.beam_point.z, Unit::metre);
    w.note(part);
    return gap.distance_m;
}

std::optional<double> balcony_clearance(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p || !p->gaps.balcony) return std::nullopt;
    return gap_at(c, w, &BeamGaps::balcony,
                  p->gaps.balcony->beam_over ? "the beam's lower side, over the balcony"
                                             : "the beam's upper side, under the balcony");
}

std::optional<double> ceiling_clearance(const Cell& c, Working& w) {
    if (!picture_of(c)) return std::nullopt;
    w.input("H", "ceiling", c.study.layout().hall.height_m, Unit::metre);
    return gap_at(c, w, &BeamGaps::ceiling, "the beam's highest point in the hall");
}

std::optional<double> wall_clearance(const Cell& c, Working& w) {
    return gap_at(c, w, &BeamGaps::wall, "the beam's point nearest to a side wall");
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kMap = "derived: exact gate-to-screen map";

std::vector<FigureDefinition> people_entries() {
    return {
        {"picture.beam_clearance", Subject::picture, "Beam over the floor", Unit::metre, kPf,
         "Least height of the beam over treads, aisles and the floor behind the rows; in front of "
         "the first row, where it comes down to the picture, it is not held.",
         "least of y_beam - y_floor", kMap,
         "The beam of {projector} passes {value} over the floor in {format}", beam_clearance},
        {"picture.head_clearance", Subject::picture, "Beam over heads", Unit::metre, kPf,
         "Least height of the beam over the crown of a standing person; negative: the head's "
         "shadow falls on the picture.",
         "h_beam - h_crown", kMap,
         "The beam of {projector} leaves {value} over standing heads in {format}", head_clearance},
    };
}

std::vector<FigureDefinition> building_entries() {
    return {
        {"picture.balcony_clearance", Subject::picture, "Beam to the balcony", Unit::metre, kPf,
         "Upright distance from a balcony's solid front up to the beam, or from the beam up to the "
         "balcony's floor where it passes under; the structure below that floor is not in the "
         "layout: take its depth off. Negative: the balcony cuts in.",
         "over: least of y_beam - y_front; under: least of y_floor - y_beam", kMap,
         "The beam of {projector} clears the balcony by {value} in {format}", balcony_clearance},
        {"picture.ceiling_clearance", Subject::picture, "Beam to the ceiling", Unit::metre, kPf,
         "Upright distance from the beam's highest point in the hall to the ceiling; negative: the "
         "ceiling cuts in. Lamps and ducts below the ceiling are not in the layout.",
         "H - greatest y_beam", kMap,
         "The beam of {projector} passes {value} under the ceiling in {format}", ceiling_clearance},
        {"picture.wall_clearance", Subject::picture, "Beam to a side wall", Unit::metre, kPf,
         "Least distance from the beam, square to the nearer side wall; negative: the wall cuts "
         "in.",
         "least distance, beam to wall", kMap,
         "The beam of {projector} passes {value} beside a side wall in {format}", wall_clearance},
    };
}

}  // namespace

std::span<const FigureDefinition> beam_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = people_entries();
        for (const FigureDefinition& one : building_entries())
            all.push_back(one);
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
