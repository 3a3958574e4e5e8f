// SPDX-License-Identifier: MIT
#include "picture/throw.hpp"
#include "study/study.hpp"

#include <cmath>
#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;
using picture::ProjectedPicture;

const ProjectedPicture* picture_of(const Cell& c) {
    return picture::find_picture(c.study.picture, c.projector, c.format);
}

const picture::Opening& opening_of(const Cell& c) {
    return c.study.picture.openings.at(static_cast<std::size_t>(c.format));
}

const room::FormatUse& use_of(const Cell& c, const ProjectedPicture& p) {
    return c.study.layout()
        .projectors.at(static_cast<std::size_t>(p.projector))
        .formats.at(static_cast<std::size_t>(p.use));
}

/// The gate's width with the squeeze in it: the A of the thin-lens formula.
double wide_gate(const Cell& c, const ProjectedPicture& p, Working& w) {
    const double gate =
        w.input("a", "gate or imager width in use", p.gate_size_m.x, Unit::millimetre);
    return gate * w.input("q", "anamorphic squeeze", use_of(c, p).squeeze, Unit::ratio);
}

double throw_in(const ProjectedPicture& p, Working& w) {
    return w.input("D", "throw along the lens axis", p.throw_m, Unit::metre);
}

double width_in(const Cell& c, Working& w) {
    return w.input("W", "picture width, chord", opening_of(c).width_m, Unit::metre);
}

std::optional<double> throw_length(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const glm::dvec3 lens = p->map.pose().lens;
    w.input("x_L", "lens across", lens.x, Unit::metre);
    w.input("y_L", "lens up", lens.y, Unit::metre);
    w.input("z_L", "lens back", lens.z, Unit::metre);
    w.input("x_P", "axis meets the surface across", p->axis_point.x, Unit::metre);
    w.input("y_P", "axis meets the surface up", p->axis_point.y, Unit::metre);
    w.input("z_P", "axis meets the surface back", p->axis_point.z, Unit::metre);
    return p->throw_m;
}

std::optional<double> throw_ratio(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const double distance = throw_in(*p, w);
    return distance / width_in(c, w);
}

std::optional<double> focal_length(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const double gate = w.input("A", "a q", wide_gate(c, *p, w), Unit::millimetre);
    const double distance = throw_in(*p, w);
    return picture::focal_length(gate, distance, width_in(c, w));
}

std::optional<double> focal_length_field(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const double gate = w.input("A", "a q", wide_gate(c, *p, w), Unit::millimetre);
    const double distance = throw_in(*p, w);
    return picture::focal_length_field(gate, distance, width_in(c, w));
}

std::optional<double> focal_length_used(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    w.note(p->lens ? "the lens is '" +
                         c.study.layout().lenses.at(static_cast<std::size_t>(*p->lens)).name + "'"
                   : std::string("no lens is chosen: the exact focal length is used"));
    return p->focal_length_used_m;
}

std::optional<double> width(const Cell& c, Working&) {
    return opening_of(c).width_m;
}
std::optional<double> height(const Cell& c, Working&) {
    return opening_of(c).height_m;
}

std::optional<double> area(const Cell& c, Working& w) {
    const picture::Opening& o = opening_of(c);
    const double arc = w.input("s", "arc width on the surface", o.uv.width(), Unit::metre);
    return arc * w.input("H", "height along the surface", o.height_m, Unit::metre);
}

std::optional<double> overfill(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const double opening = opening_of(c).area_m2;
    w.input("A_O", "area of the opening", opening, Unit::square_metre);
    w.input("A_outside", "picture area outside it", p->overfill * opening, Unit::square_metre);
    return p->overfill;
}

std::optional<double> crop(const Cell& c, Working&) {
    const ProjectedPicture* p = picture_of(c);
    return p ? std::optional(p->crop) : std::nullopt;
}

std::optional<double> uncovered(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const double opening = opening_of(c).area_m2;
    w.input("A_O", "area of the opening", opening, Unit::square_metre);
    w.input("A_dark", "area that the picture leaves dark", p->uncovered * opening,
            Unit::square_metre);
    return p->uncovered;
}

constexpr Per kPf{.projector = true, .format = true};
constexpr Per kF{.format = true};
constexpr const char* kThinLens = "thin-lens equation; Clerc, Photography: Theory and Practice";
constexpr const char* kMap = "derived: exact gate-to-screen map";

std::vector<FigureDefinition> lens_entries() {
    return {
        {"picture.throw", Subject::picture, "Throw", Unit::metre, kPf,
         "Along the lens axis, from the principal plane to the picture surface.", "|P - L|",
         "derived: ray and surface", "The throw is {value} for {projector} in {format}",
         throw_length},
        {"picture.throw_ratio", Subject::picture, "Throw ratio", Unit::ratio, kPf,
         "Throw over the picture's chord width.", "D / W", "common practice, no source",
         "The throw ratio is {value} for {projector} in {format}", throw_ratio},
        {"picture.focal_length", Subject::picture, "Focal length wanted", Unit::millimetre, kPf,
         "Exact thin-lens focal length that fills the opening's width.",
         "f = A D / (W + A), A = a q", kThinLens, "{projector} wants {value} for {format}",
         focal_length},
        {"picture.focal_length_field", Subject::picture, "By the field rule", Unit::millimetre, kPf,
         "The approximation used in the field; longer than the exact one by f A / W.",
         "f = A D / W, A = a q", "common practice, no source",
         "The field rule gives {value} for {projector} in {format}", focal_length_field},
        {"picture.focal_length_used", Subject::picture, "Focal length in use", Unit::millimetre,
         kPf, "Of the lens or zoom position that the layout names, else the exact one.", "f",
         "derived: layout", "{projector} stands at {value} in {format}", focal_length_used},
    };
}

std::vector<FigureDefinition> opening_entries() {
    return {
        {"picture.width", Subject::picture, "Picture width", Unit::metre, kF,
         "Chord of the masked opening.", "W", "derived: frame, masking and aspect ratio",
         "The picture is {value} wide in {format}", width},
        {"picture.height", Subject::picture, "Picture height", Unit::metre, kF,
         "Of the masked opening, along the surface.", "H",
         "derived: frame, masking and aspect ratio", "The picture is {value} high in {format}",
         height},
        {"picture.area", Subject::picture, "Picture area", Unit::square_metre, kF,
         "Of the surface inside the masked opening.", "s H", "derived: unrolled surface",
         "The picture covers {value} in {format}", area},
    };
}

std::vector<FigureDefinition> cover_entries() {
    return {
        {"picture.overfill", Subject::picture, "Overfill", Unit::fraction, kPf,
         "Picture area outside the opening over the opening's area.", "A_outside / A_O", kMap,
         "{projector} throws {value} past the opening in {format}", overfill},
        {"picture.crop", Subject::picture, "Crop", Unit::fraction, kPf,
         "Part of the source image whose light falls outside the opening.", "a_outside / a_gate",
         kMap, "{projector} loses {value} of the image in {format}", crop},
        {"picture.uncovered", Subject::picture, "Left dark", Unit::fraction, kPf,
         "Part of the opening that the picture does not reach.", "A_dark / A_O", kMap,
         "{projector} leaves {value} of the opening dark in {format}", uncovered},
    };
}

}  // namespace

std::span<const FigureDefinition> picture_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all;
        const auto add = [&](std::span<const FigureDefinition> part) {
            all.insert(all.end(), part.begin(), part.end());
        };
        add(lens_entries());
        add(opening_entries());
        add(shape_figures());
        add(cover_entries());
        add(lens_figures());
        add(focus_figures());
        add(plate_figures());
        add(covering_figures());
        add(aim_figures());
        add(beam_figures());
        add(port_figures());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
