// SPDX-License-Identifier: MIT
#include "picture/focus.hpp"
#include "study/picture_cells.hpp"

#include <vector>

/// The figures on how sharp the picture is on a surface that is not square to the lens axis.
namespace rakeline::study {
namespace {

using base::Unit;
using picture::Focus;
using picture::ProjectedPicture;

bool is_film(const Cell& c) {
    return projector_of(c).kind == room::SourceKind::film;
}

/// A picture through a lens that is fitted: without one there is no f-number, and no blur.
struct Focused {
    const ProjectedPicture* picture = nullptr;
    double f_number = 0.0;
    Focus focus;
};

std::optional<Focused> focused(const Cell& c) {
    const ProjectedPicture* p = picture_of(c);
    const room::Lens* lens = p ? fitted_lens(c, *p) : nullptr;
    if (!lens) return std::nullopt;
    const auto focus = picture::best_focus(p->map, opening_of(c), lens->f_number);
    if (!focus) return std::nullopt;
    return Focused{p, lens->f_number, *focus};
}

void ends_in(const Focus& focus, Working& w) {
    w.input("D_n", "nearest part of the opening, along the axis", focus.nearest_m, Unit::metre);
    w.input("D_f", "farthest part of the opening", focus.farthest_m, Unit::metre);
}

void pupil_in(const Focused& at, Working& w) {
    w.input("f", "focal length in use", at.picture->focal_length_used_m, Unit::millimetre);
    w.input("N", "f-number of the lens", at.f_number, Unit::ratio);
}

std::optional<double> focus_distance(const Cell& c, Working& w) {
    const auto at = focused(c);
    if (!at) return std::nullopt;
    ends_in(at->focus, w);
    w.input("D_0 - D", "best focus less the throw", at->focus.best_m - at->picture->throw_m,
            Unit::millimetre);
    return at->focus.best_m;
}

std::optional<double> worst_blur(const Cell& c, Working& w) {
    const auto at = focused(c);
    if (!at) return std::nullopt;
    pupil_in(*at, w);
    ends_in(at->focus, w);
    w.input("D_0", "best focus, (D_n + D_f) / 2", at->focus.best_m, Unit::metre);
    w.input("D_0 - D", "best focus less the throw", at->focus.best_m - at->picture->throw_m,
            Unit::millimetre);
    return at->focus.worst_blur_m;
}

std::optional<double> worst_gate_blur(const Cell& c, Working& w) {
    const auto at = focused(c);
    if (!at) return std::nullopt;
    pupil_in(*at, w);
    ends_in(at->focus, w);
    w.input("D_0", "best focus, (D_n + D_f) / 2", at->focus.best_m, Unit::metre);
    return at->focus.worst_gate_blur_m;
}

std::optional<double> pixel_size(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p || is_film(c)) return std::nullopt;
    const auto ratio = p->map.area_ratio({0.0, 0.0});
    if (!ratio) return std::nullopt;
    w.input("A", "imager width in use", p->gate_size_m.x, Unit::millimetre);
    w.input("n", "pixels across it", use_of(c, *p).pixels_wide, Unit::count);
    w.input("J", "screen area over imager area, at the imager's centre", *ratio, Unit::ratio);
    return picture::pixel_size(p->map, projector_of(c).imager.pixel_pitch_m);
}

std::optional<double> film_detail(const Cell& c, Working& w) {
    const ProjectedPicture* p = picture_of(c);
    if (!p || !is_film(c)) return std::nullopt;
    const auto ratio = p->map.area_ratio({0.0, 0.0});
    if (!ratio) return std::nullopt;
    const double lines = projector_of(c).film_resolution_lp_mm;
    w.input("R", "line pairs a millimetre that the film is held to", lines, Unit::ratio);
    const double detail =
        w.input("g", "half a line pair on the film", picture::film_detail(lines), Unit::micrometre);
    w.input("J", "screen area over gate area, at the gate's centre", *ratio, Unit::ratio);
    w.input("q", "anamorphic squeeze", p->map.pose().squeeze, Unit::ratio);
    return picture::detail_size(p->map, detail);
}

/// What the source itself can show: one pixel, or half a line pair of the film.
double finest_detail(const room::Projector& projector) {
    return projector.kind == room::SourceKind::film
               ? picture::film_detail(projector.film_resolution_lp_mm)
               : projector.imager.pixel_pitch_m;
}

std::optional<double> blur_ratio(const Cell& c, Working& w) {
    const auto at = focused(c);
    if (!at) return std::nullopt;
    const auto detail = picture::detail_size(at->picture->map, finest_detail(projector_of(c)));
    if (!detail) return std::nullopt;
    const double blur =
        w.input("c", "worst blur on the screen", at->focus.worst_blur_m, Unit::millimetre);
    const char* what = is_film(c) ? "half a line pair of the film, on the screen"
                                  : "one pixel on the screen, upright";
    return blur / w.input("d", what, *detail, Unit::millimetre);
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kMap = "derived: exact gate-to-screen map";
constexpr const char* kCone = "derived: thin lens and similar triangles";

std::vector<FigureDefinition> focus_entries() {
    return {
        {"picture.focus_distance", Subject::picture, "Best focus", Unit::metre, kPf,
         "Distance along the lens axis to focus at, so that the worst blur in the opening is "
         "least.",
         "D_0 = (D_n + D_f) / 2", "derived: the blur of both ends made the same",
         "{projector} is best focused at {value} in {format}", focus_distance},
        {"picture.blur", Subject::picture, "Worst blur", Unit::millimetre, kPf,
         "Worst circle of confusion on the screen at best focus.",
         "(f / N) (D_f - D_n) / (D_f + D_n)", kCone,
         "{projector} blurs by {value} at the worst place of {format}", worst_blur},
        {"picture.blur_gate", Subject::picture, "Worst blur in the gate", Unit::micrometre, kPf,
         "Worst circle of confusion at best focus as it stands in the gate: that of the nearest "
         "part of the opening.",
         "(f / N) f (D_0 - D_n) / (D_n (D_0 - f))", kCone,
         "{projector} blurs by {value} in the gate for the worst place of {format}",
         worst_gate_blur},
    };
}

std::vector<FigureDefinition> detail_entries() {
    return {
        {"picture.pixel_size", Subject::picture, "One pixel", Unit::millimetre, kPf,
         "Side of one pixel on the screen at the picture's centre.", "(A / n) sqrt(J)", kMap,
         "A pixel of {projector} is {value} in {format}", pixel_size},
        {"picture.film_detail", Subject::picture, "Finest detail on film", Unit::millimetre, kPf,
         "Half a line pair of the resolution that the film is held to, upright on the screen at "
         "the picture's centre.",
         "g sqrt(J / q), g = 1 / (2 R)", kMap,
         "The finest detail that the film of {projector} is held to is {value} in {format}",
         film_detail},
        {"picture.blur_ratio", Subject::picture, "Worst blur over finest detail", Unit::ratio, kPf,
         "Worst circle of confusion over one pixel, or over half a line pair of the film, upright "
         "at the picture's centre.",
         "c / d", kCone,
         "The worst blur of {projector} in {format} is {value} times its finest detail",
         blur_ratio},
    };
}

}  // namespace

std::span<const FigureDefinition> focus_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = focus_entries();
        for (const FigureDefinition& entry : detail_entries())
            all.push_back(entry);
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
