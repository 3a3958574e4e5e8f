// SPDX-License-Identifier: MIT
#include "picture/lens_reach.hpp"
#include "study/picture_cells.hpp"

#include <vector>

/// The figures on whether the fitted lens reaches what the picture asks of it: shift, image circle,
/// zoom range. The lens pick judges its candidates by the same function.
namespace rakeline::study {
namespace {

using base::Unit;
using picture::LensDemand;
using picture::LensReach;

struct Fitted {
    const room::Lens& lens;
    const picture::ProjectedPicture& picture;
    LensDemand demand;
    LensReach reach;
};

/// Nothing without a picture, or where the layout fits no lens for it.
std::optional<Fitted> fitted(const Cell& c) {
    const picture::ProjectedPicture* p = picture_of(c);
    const room::Lens* lens = p ? fitted_lens(c, *p) : nullptr;
    if (!lens) return std::nullopt;
    const LensDemand demand = picture::lens_demand(*p, use_of(c, *p));
    return Fitted{*lens, *p, demand, picture::lens_reach(*lens, demand)};
}

std::optional<double> shift_short(const Cell& c, Working& w) {
    const auto at = fitted(c);
    if (!at) return std::nullopt;
    w.input("s_a", "shift across that is set, in gate widths", at->demand.shift_across,
            Unit::fraction);
    w.input("S_a", "shift across that the lens has", at->lens.shift_across_max, Unit::fraction);
    w.input("s_h", "shift up that is set, in gate heights", at->demand.shift_up, Unit::fraction);
    w.input("S_h", "shift up or down that the lens has", at->lens.shift_up_max, Unit::fraction);
    return at->reach.shift_short();
}

std::optional<double> field_lost(const Cell& c, Working& w) {
    const auto at = fitted(c);
    if (!at) return std::nullopt;
    w.input("x", "shift short across, in gate widths", at->reach.shift_across_short,
            Unit::fraction);
    w.input("y", "shift short up or down, in gate heights", at->reach.shift_up_short,
            Unit::fraction);
    return at->reach.field_lost;
}

std::optional<double> image_circle_spare(const Cell& c, Working& w) {
    const auto at = fitted(c);
    if (!at) return std::nullopt;
    const glm::dvec2 shift = glm::abs(at->picture.map.pose().shift_m);
    w.input("C", "image circle of the lens, diameter", at->lens.image_circle_m, Unit::millimetre);
    w.input("a", "gate or imager width in use", at->picture.gate_size_m.x, Unit::millimetre);
    w.input("h", "gate or imager height in use", at->picture.gate_size_m.y, Unit::millimetre);
    w.input("s_a", "shift across", shift.x, Unit::millimetre);
    w.input("s_h", "shift up or down", shift.y, Unit::millimetre);
    w.input("c", "circle wanted", at->demand.image_circle_m, Unit::millimetre);
    return at->reach.image_circle_spare_m;
}

/// One end of a zoom; a prime has no range.
template <std::optional<double> LensReach::*kRatio, double room::Lens::*kFocalLength>
std::optional<double> zoom_end(const Cell& c, Working& w) {
    const auto at = fitted(c);
    if (!at || at->lens.kind == room::LensKind::prime) return std::nullopt;
    w.input("A", "gate or imager width in use times the squeeze", at->demand.wide_gate_m,
            Unit::millimetre);
    w.input("D", "throw along the lens axis", at->demand.throw_m, Unit::metre);
    w.input("f", "focal length at this end of the zoom", at->lens.*kFocalLength, Unit::millimetre);
    return at->reach.*kRatio;
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kReach = "derived: gate, shift and image circle";

std::vector<FigureDefinition> reach_entries() {
    return {
        {"picture.shift_short", Subject::picture, "Shift short of", Unit::fraction, kPf,
         "Shift that is set beyond what the lens has, in gate widths across or gate heights up, "
         "whichever is more; 0 where the lens has enough.",
         "greatest of |s_a| - S_a, |s_h| - S_h, 0", kReach,
         "The lens of {projector} lacks {value} of the gate in shift for {format}", shift_short},
        {"picture.field_lost", Subject::picture, "Lost for want of shift", Unit::fraction, kPf,
         "Share of the gate that stands off the opening because the lens lacks shift.",
         "1 - (1 - x) (1 - y)", kReach,
         "{projector} loses {value} of the gate in {format} for want of shift", field_lost},
        {"picture.image_circle_spare", Subject::picture, "Image circle to spare", Unit::millimetre,
         kPf,
         "Diameter of the lens's image circle less that which reaches the farthest corner of the "
         "shifted gate; negative where corners stay dark.",
         "C - c, c = 2 hypot(a / 2 + s_a, h / 2 + s_h)", kReach,
         "The lens of {projector} has {value} of image circle to spare in {format}",
         image_circle_spare},
    };
}

std::vector<FigureDefinition> zoom_entries() {
    constexpr const char* kThinLens = "thin-lens equation; Clerc, Photography: Theory and Practice";
    return {
        {"picture.throw_ratio_short", Subject::picture, "Zoom's least throw ratio", Unit::ratio,
         kPf, "Throw over the width that the fitted zoom gives at its short end.",
         "D / W, W = A (D - f) / f", kThinLens,
         "The zoom of {projector} reaches down to a throw ratio of {value} in {format}",
         zoom_end<&LensReach::throw_ratio_short, &room::Lens::focal_length_m>},
        {"picture.throw_ratio_long", Subject::picture, "Zoom's greatest throw ratio", Unit::ratio,
         kPf, "Throw over the width that the fitted zoom gives at its long end.",
         "D / W, W = A (D - f) / f", kThinLens,
         "The zoom of {projector} reaches up to a throw ratio of {value} in {format}",
         zoom_end<&LensReach::throw_ratio_long, &room::Lens::focal_length_long_m>},
    };
}

}  // namespace

std::span<const FigureDefinition> lens_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = reach_entries();
        for (const FigureDefinition& entry : zoom_entries())
            all.push_back(entry);
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
