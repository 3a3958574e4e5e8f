// SPDX-License-Identifier: MIT
#include "desk/curve_choice.hpp"

#include "base/quantity_text.hpp"

namespace rakeline::desk {
namespace {

std::string surface_words(const PanelInput& in,
                          const light::CurvatureTrial& trial,
                          SurfacePart part) {
    if (part == SurfacePart::tilt)
        return "a tilt of " + base::quantity_text(trial.tilt_rad, base::Unit::radian, in.units());
    if (trial.radius_m == 0.0) return "a flat screen";
    return "a radius of " + base::quantity_text(trial.radius_m, base::Unit::metre, in.units());
}

}  // namespace

bool curves_current(const PanelInput& in, const Workspace& w) {
    if (!in.current || !in.curves.answer) return false;
    const CurveQuestion& asked = in.curves.answer->question;
    return same_brief(asked.study.get(), in.study) && asked.projector == w.projector &&
           asked.format == w.format;
}

const light::CurvatureTrial* most_even(const PanelInput& in, const Workspace& w, SurfacePart part) {
    if (!curves_current(in, w) || !in.curves.answer->help) return nullptr;
    const light::CurvatureHelp& help = *in.curves.answer->help;
    const bool curve = part == SurfacePart::curve;
    const auto best = curve ? help.best_curve : help.best_tilt;
    if (!best) return nullptr;
    return &(curve ? help.curves : help.tilts).at(static_cast<std::size_t>(*best));
}

std::string take_words(const PanelInput& in, const Workspace& w, SurfacePart part) {
    if (!curves_current(in, w)) return "Nothing to take until the trials are of this layout";
    const light::CurvatureTrial* best = most_even(in, w, part);
    if (!best) return "No trial stands clear of the screen wall";
    const room::Screen& screen = in.brief.layout.screen;
    const bool has = part == SurfacePart::curve ? screen.radius_m == best->radius_m
                                                : screen.tilt_rad == best->tilt_rad;
    const std::string words = surface_words(in, *best, part);
    return has ? "The screen has the most even one, " + words
               : "Puts the most even one into the layout, " + words;
}

std::optional<Edit> take_surface(const PanelInput& in, const Workspace& w, SurfacePart part) {
    const light::CurvatureTrial* best = most_even(in, w, part);
    if (!best) return std::nullopt;
    return Edit{part == SurfacePart::curve ? "Curve the screen" : "Tilt the screen",
                study::with_surface(in.brief.layout, *best),
                {}};
}

}  // namespace rakeline::desk
