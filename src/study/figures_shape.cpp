// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include <vector>

/// The figures on the shape of the uncorrected picture: how the axis arrives, its edges, keystone,
/// bows.
namespace rakeline::study {
namespace {

using base::Unit;
using picture::ProjectedPicture;

const ProjectedPicture* picture_of(const Cell& c) {
    return picture::find_picture(c.study.picture, c.projector, c.format);
}

std::optional<double> angle_down(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(p->angle_down_rad) : std::nullopt;
}

std::optional<double> angle_across(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(p->angle_across_rad) : std::nullopt;
}

/// Corners in the order of PictureShape.
enum Corner : std::size_t { kTopLeft, kTopRight, kBottomRight, kBottomLeft };

/// Length of the straight line in space between two corners of the picture on the screen.
double corner_distance(const ProjectedPicture& p, Corner from, Corner to) {
    const geometry::Patch& surface = p.map.surface();
    return glm::length(geometry::point_at(surface, p.shape.corners.at(to)) -
                       geometry::point_at(surface, p.shape.corners.at(from)));
}

template <Corner kFrom, Corner kTo>
std::optional<double> edge_length(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(corner_distance(*p, kFrom, kTo)) : std::nullopt;
}

std::optional<double> keystone_vertical(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    w.input("w_top", "width of the picture's top edge", corner_distance(*p, kTopLeft, kTopRight),
            Unit::metre);
    w.input("w_bottom", "width of its bottom edge", corner_distance(*p, kBottomLeft, kBottomRight),
            Unit::metre);
    return p->shape.keystone_vertical;
}

std::optional<double> keystone_horizontal(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    w.input("h_left", "height of the picture's left edge",
            corner_distance(*p, kTopLeft, kBottomLeft), Unit::metre);
    w.input("h_right", "height of its right edge", corner_distance(*p, kTopRight, kBottomRight),
            Unit::metre);
    return p->shape.keystone_horizontal;
}

std::optional<double> side_slope(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(p->shape.side_slope_rad) : std::nullopt;
}

std::optional<double> bow_top(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(p->shape.bow_top_m) : std::nullopt;
}

std::optional<double> bow_bottom(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(p->shape.bow_bottom_m) : std::nullopt;
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kMap = "derived: exact gate-to-screen map";

std::vector<FigureDefinition> angle_entries() {
    return {
        {"picture.angle_down", Subject::picture, "Projection angle down", Unit::radian, kPf,
         "Lens axis against the surface's normal where it arrives, vertical.",
         "angle(axis, normal)", "derived: axis and surface normal",
         "{projector} points down by {value} in {format}", angle_down},
        {"picture.angle_across", Subject::picture, "Projection angle across", Unit::radian, kPf,
         "Lens axis against the surface's normal where it arrives, horizontal.",
         "angle(axis, normal)", "derived: axis and surface normal",
         "{projector} points across by {value} in {format}", angle_across},
    };
}

std::vector<FigureDefinition> edge_entries() {
    constexpr const char* kMeaning =
        "Straight from corner to corner of the uncorrected picture, before the masking cuts it.";
    const auto entry = [&](const char* id, const char* label, const char* sentence, auto evaluate) {
        return FigureDefinition{id,
                                Subject::picture,
                                label,
                                Unit::metre,
                                kPf,
                                kMeaning,
                                "distance between two corners",
                                kMap,
                                sentence,
                                evaluate};
    };
    return {
        entry("picture.width_top", "Top edge, uncorrected",
              "The uncorrected picture of {projector} is {value} wide at the top in {format}",
              edge_length<kTopLeft, kTopRight>),
        entry("picture.width_bottom", "Bottom edge, uncorrected",
              "The uncorrected picture of {projector} is {value} wide at the bottom in {format}",
              edge_length<kBottomLeft, kBottomRight>),
        entry("picture.height_left", "Left edge, uncorrected",
              "The uncorrected picture of {projector} is {value} high at the left in {format}",
              edge_length<kBottomLeft, kTopLeft>),
        entry("picture.height_right", "Right edge, uncorrected",
              "The uncorrected picture of {projector} is {value} high at the right in {format}",
              edge_length<kBottomRight, kTopRight>),
    };
}

std::vector<FigureDefinition> keystone_entries() {
    return {
        {"picture.keystone_vertical", Subject::picture, "Keystone, vertical", Unit::fraction, kPf,
         "Bottom edge against top edge of the uncorrected picture.",
         "2 (w_bottom - w_top) / (w_bottom + w_top)", kMap,
         "Keystone is {value} for {projector} in {format}", keystone_vertical},
        {"picture.keystone_horizontal", Subject::picture, "Keystone, horizontal", Unit::fraction,
         kPf, "Right edge against left edge of the uncorrected picture.",
         "2 (h_right - h_left) / (h_right + h_left)", kMap,
         "Sideways keystone is {value} for {projector} in {format}", keystone_horizontal},
        {"picture.side_slope", Subject::picture, "Side slope", Unit::radian, kPf,
         "Mean lean of the picture's sides.", "mean lean of the two sides", kMap,
         "The sides lean by {value} for {projector} in {format}", side_slope},
        {"picture.bow_top", Subject::picture, "Bow of the top edge", Unit::millimetre, kPf,
         "Sagitta of the top edge on the surface, positive upward.",
         "greatest height over the chord", kMap,
         "The top edge bows by {value} for {projector} in {format}", bow_top},
        {"picture.bow_bottom", Subject::picture, "Bow of the bottom edge", Unit::millimetre, kPf,
         "Sagitta of the bottom edge on the surface, positive upward.",
         "greatest height over the chord", kMap,
         "The bottom edge bows by {value} for {projector} in {format}", bow_bottom},
    };
}

}  // namespace

std::span<const FigureDefinition> shape_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all;
        for (auto& part : {angle_entries(), edge_entries(), keystone_entries()}) {
            all.insert(all.end(), part.begin(), part.end());
        }
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
