// SPDX-License-Identifier: MIT
#include "drawing/screen_face.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

/// Lengths around the flat drawing of the screen. On every side stand, from the picture outward:
/// how far it reaches past the opening, and the length of its edge; left and below also where the
/// masks stand. The first two stand in the masking where that leaves room for them.
namespace rakeline::drawing {
namespace {

using picture::PictureEdge;

/// Lines of lettering outward from the picture or the frame.
constexpr double kOverfillLine = 1.0, kEdgeLine = 2.0, kStopLine = 3.4;

/// One side of opening and picture. `x` of its coordinates runs along the side, `y` outward.
struct Side {
    PictureEdge edge;
    std::size_t outline_edge;            ///< of PictureShape::outline, walked counter-clockwise
    glm::dvec2 along;                    ///< unit, up or to the right
    glm::dvec2 outward;                  ///< unit
    std::array<std::size_t, 2> corners;  ///< of PictureShape, so that `outward` lies to the left
    const char* overfill;
    const char* share;
    const char* length;
};

const std::array<Side, 4> kSides{{
    {PictureEdge::left,
     3,
     {0, 1},
     {-1, 0},
     {3, 0},
     "picture.overfill_left",
     "picture.overfill_left_share",
     "picture.height_left"},
    {PictureEdge::right,
     1,
     {0, 1},
     {1, 0},
     {1, 2},
     "picture.overfill_right",
     "picture.overfill_right_share",
     "picture.height_right"},
    {PictureEdge::top,
     2,
     {1, 0},
     {0, 1},
     {0, 1},
     "picture.overfill_top",
     "picture.overfill_top_share",
     "picture.width_top"},
    {PictureEdge::bottom,
     0,
     {1, 0},
     {0, -1},
     {2, 3},
     "picture.overfill_bottom",
     "picture.overfill_bottom_share",
     "picture.width_bottom"},
}};

/// How far outward a rectangle reaches on this side, from the frame's centre.
double reach(const geometry::Rectangle& r, const Side& side) {
    return std::max(glm::dot(glm::dvec2(r.left, r.bottom), side.outward),
                    glm::dot(glm::dvec2(r.right, r.top), side.outward));
}

double outline_reach(const picture::PictureShape& shape, const Side& side) {
    double most = glm::dot(shape.outline.front(), side.outward);
    for (const glm::dvec2& p : shape.outline)
        most = std::max(most, glm::dot(p, side.outward));
    return most;
}

/// Where the lines of lettering on one side begin.
struct Stand {
    double picture_m = 0.0;  ///< outward place that overfill and edge length count from
    bool in_masking = false;
};

Stand stand_of(const Face& face, const Side& side) {
    const double outside = reach(face.outer, side);
    if (!face.chosen.picture || !face.chosen.opening) return {outside, false};
    const double covered = std::max(outline_reach(face.chosen.picture->shape, side),
                                    reach(face.chosen.opening->uv, side));
    const double lettering = (kEdgeLine + 0.8) * face.pitch_m;
    if (reach(face.frame, side) - covered > lettering) return {covered, true};
    return {outside, false};
}

/// Outward place of the picture's rim at a place along the side; nothing past the rim's ends.
std::optional<double> rim_at(const picture::PictureShape& shape, const Side& side, double along) {
    const std::size_t count = shape.outline.size();
    const std::size_t first = side.outline_edge * picture::kSegmentsPerEdge;
    for (std::size_t k = 0; k < picture::kSegmentsPerEdge; ++k) {
        const glm::dvec2 a = shape.outline[(first + k) % count];
        const glm::dvec2 b = shape.outline[(first + k + 1) % count];
        const double s = glm::dot(a, side.along), t = glm::dot(b, side.along);
        if ((along < s) == (along < t) && along != s && along != t) continue;
        const double part = s == t ? 0.0 : (along - s) / (t - s);
        return glm::dot(a + part * (b - a), side.outward);
    }
    return std::nullopt;
}

/// Where along the opening's edge the picture reaches least past it, and the rim there.
struct Least {
    double along_m = 0.0;
    double rim_m = 0.0;
};

std::optional<Least> least_overfill(const picture::PictureShape& shape,
                                    const geometry::Rectangle& opening,
                                    const Side& side) {
    constexpr int kSteps = 32;
    const double from = glm::dot(glm::dvec2(opening.left, opening.bottom), side.along);
    const double to = glm::dot(glm::dvec2(opening.right, opening.top), side.along);
    std::optional<Least> least;
    for (int i = 0; i <= kSteps; ++i) {
        const double along = std::lerp(from, to, static_cast<double>(i) / kSteps);
        const auto rim = rim_at(shape, side, along);
        if (rim && (!least || *rim < least->rim_m)) least = Least{along, *rim};
    }
    return least;
}

/// A leader from the place where an edge's overfill is least, and the length beside it.
void add_overfill(Face& face, const Side& side) {
    const auto past = face.value(side.overfill);
    if (!past) return;
    const geometry::Rectangle& opening = face.chosen.opening->uv;
    const auto least = least_overfill(face.chosen.picture->shape, opening, side);
    if (!least) return;
    const auto at = [&](double along, double outward) {
        return along * side.along + outward * side.outward;
    };
    const double line = stand_of(face, side).picture_m + kOverfillLine * face.pitch_m;
    const double inward = least->along_m > glm::dot(opening.centre(), side.along) ? -1.0 : 1.0;
    const bool upright = side.along.y != 0.0;
    // Some outputs centre upright lettering whatever its anchor, so the leader ends short of it.
    const double text = (upright ? 2.6 : 0.85) * inward * face.pitch_m;
    const Anchor level = inward > 0.0 ? Anchor::left : Anchor::right;
    const Ink ink = *past < 0.0 ? Ink::missed : Ink::near;
    std::vector<glm::dvec2> leader{at(least->along_m, std::min(least->rim_m, reach(opening, side))),
                                   at(least->along_m, upright ? line - 0.45 * face.pitch_m : line)};
    if (!upright) leader.push_back(at(least->along_m + 0.6 * inward * face.pitch_m, line));
    face.add(Line{.points = std::move(leader),
                  .weight = Weight::helper,
                  .ink = ink,
                  .shows = face.projector()});
    face.add(Label{.at = at(least->along_m + text, line),
                   .text = "past " + face.text(side.overfill) + " · " + face.text(side.share),
                   .anchor = upright ? Anchor::centre : level,
                   .ink = ink,
                   .vertical = upright,
                   .shows = face.projector()});
}

/// The edge of the uncorrected picture, corner to corner.
void add_edge_length(Face& face, const Side& side) {
    const auto length = face.value(side.length);
    if (!length) return;
    const auto& shape = face.chosen.picture->shape;
    Dimension d;
    d.from = shape.corners.at(side.corners[0]);
    d.to = shape.corners.at(side.corners[1]);
    d.offset_m = stand_of(face, side).picture_m + kEdgeLine * face.pitch_m -
                 0.5 * glm::dot(d.from + d.to, side.outward);
    d.prefix = "picture ";
    d.length_m = length;
    d.shows = face.projector();
    face.add(d);
}

struct Stop {
    const char* id;
    const char* prefix;
    glm::dvec2 outward;
};

/// A mask's stop from the frame's centre line, drawn left of the frame or under it.
void add_stop(Face& face, const Stop& stop, const Side& beside) {
    const auto from_centre = face.value(stop.id);
    if (!from_centre) return;
    const double lines = stand_of(face, beside).in_masking ? kOverfillLine : kStopLine;
    const glm::dvec2 foot = reach(face.frame, beside) * beside.outward;
    Dimension d;
    d.from = foot;
    d.to = foot + *from_centre * stop.outward;
    // The line has to stand to the left of its own direction.
    const glm::dvec2 along = d.to - d.from;
    if (glm::dot(glm::dvec2(-along.y, along.x), beside.outward) < 0.0) std::swap(d.from, d.to);
    d.offset_m = reach(face.outer, beside) + lines * face.pitch_m - reach(face.frame, beside);
    d.unit = base::Unit::millimetre;
    d.prefix = stop.prefix;
    d.shows = face.screen();
    face.add(d);
}

void add_stops(Face& face) {
    if (!face.chosen.opening) return;
    const Side& left = kSides[0];
    const Side& bottom = kSides[3];
    add_stop(face, {"picture.mask_left", "mask ", {-1, 0}}, bottom);
    add_stop(face, {"picture.mask_right", "mask ", {1, 0}}, bottom);
    add_stop(face, {"picture.mask_top", "mask ", {0, 1}}, left);
    add_stop(face, {"picture.mask_bottom", "mask ", {0, -1}}, left);
}

}  // namespace

void add_face_dimensions(Face& face) {
    add_stops(face);
    if (!face.chosen.picture || !face.chosen.opening) return;
    for (const Side& side : kSides) {
        add_edge_length(face, side);
        add_overfill(face, side);
    }
}

}  // namespace rakeline::drawing
