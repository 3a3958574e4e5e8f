// SPDX-License-Identifier: MIT
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <cmath>
#include <vector>

/// The figures that a projectionist sets by hand for a format: aim, shift and light.
namespace rakeline::study {
namespace {

using base::Unit;
using light::PictureLight;

/// Its light, where the reference seat sees some of it: only then is there anything to scale.
const PictureLight* lit(const Cell& c) {
    const picture::ProjectedPicture* p = picture_of(c);
    if (!p) return nullptr;
    const auto& light =
        c.study.light.lights.at(static_cast<std::size_t>(p - c.study.picture.pictures.data()));
    return light.flux_needed_lm ? &light : nullptr;
}

glm::dvec3 axis_in(const picture::ProjectedPicture& p, Working& w) {
    const glm::dvec3 axis = p.map.pose().axis;
    w.input("a_x", "lens axis, across", axis.x, Unit::ratio);
    w.input("a_y", "lens axis, up", axis.y, Unit::ratio);
    w.input("a_z", "lens axis, back", axis.z, Unit::ratio);
    return axis;
}

std::optional<double> aim_down(const Cell& c, Working& w) {
    const picture::ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const glm::dvec3 axis = axis_in(*p, w);
    return std::atan2(-axis.y, std::hypot(axis.x, axis.z));
}

std::optional<double> aim_across(const Cell& c, Working& w) {
    const picture::ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    const glm::dvec3 axis = axis_in(*p, w);
    return std::atan2(axis.x, -axis.z);
}

std::optional<double> shift_across(const Cell& c, Working& w) {
    const picture::ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    w.input("s", "shift in gate widths", use_of(c, *p).shift_across, Unit::ratio);
    w.input("a", "gate or imager width in use", p->gate_size_m.x, Unit::millimetre);
    return p->map.pose().shift_m.x;
}

std::optional<double> shift_up(const Cell& c, Working& w) {
    const picture::ProjectedPicture* p = picture_of(c);
    if (!p) return std::nullopt;
    w.input("s", "shift in gate heights", use_of(c, *p).shift_up, Unit::ratio);
    w.input("h", "gate or imager height in use", p->gate_size_m.y, Unit::millimetre);
    return p->map.pose().shift_m.y;
}

std::optional<double> luminance_target(const Cell& c, Working& w) {
    w.note(projector_of(c).kind == room::SourceKind::film
               ? "film: open gate, no film in it, shutter running"
               : "digital: the whitest signal");
    return picture_of(c) ? std::optional(light::target_luminance_cdm2(projector_of(c).kind))
                         : std::nullopt;
}

std::optional<double> output_wanted(const Cell& c, Working& w) {
    const PictureLight* l = lit(c);
    if (!l) return std::nullopt;
    const double now =
        w.input("L", "reference reading with the light now", *l->reference_cdm2, Unit::cd_per_m2);
    return w.input("L_target", "nominal luminance of this kind of show", l->target_cdm2,
                   Unit::cd_per_m2) /
           now;
}

/// A measured flux says nothing about the current that it was measured at, and a laser has no arc.
std::optional<double> lamp_current_wanted(const Cell& c, Working& w) {
    const room::FluxChain& chain = projector_of(c).flux;
    if (chain.lamp != room::LampKind::xenon || chain.entry != room::FluxEntry::chain) return {};
    const auto output = output_wanted(c, w);
    if (!output) return std::nullopt;
    w.note("in proportion near the present current only: go by the meter at the end");
    w.note("the maker of the lamp gives the least and the greatest current; keep between them");
    return w.input("I", "lamp current now", chain.lamp_current_a, Unit::ampere) * *output;
}

constexpr Per kPf{.projector = true, .format = true};

}  // namespace

std::span<const FigureDefinition> aim_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"picture.aim_down", Subject::picture, "Axis down from level", Unit::radian, kPf,
         "Lens axis against the level, as a spirit level on the machine shows it.",
         "atan(-a_y / sqrt(a_x^2 + a_z^2))", "derived: lens axis",
         "{projector} is tilted down by {value} in {format}", aim_down},
        {"picture.aim_across", Subject::picture, "Axis turned right", Unit::radian, kPf,
         "Lens axis in plan against the hall's centre line; negative to the left as seen from the "
         "seats.",
         "atan(a_x / -a_z)", "derived: lens axis",
         "{projector} is turned to the right by {value} in {format}", aim_across},
        {"picture.shift_across", Subject::picture, "Lens shift across", Unit::millimetre, kPf,
         "How far the lens stands off the middle of the gate or imager part in use; positive moves "
         "the picture to the right as seen from the seats.",
         "s a", "derived: layout", "The lens of {projector} is shifted {value} across in {format}",
         shift_across},
        {"picture.shift_up", Subject::picture, "Lens shift up", Unit::millimetre, kPf,
         "How far the lens stands off the middle of the gate or imager part in use; positive moves "
         "the picture up.",
         "s h", "derived: layout", "The lens of {projector} is shifted {value} up in {format}",
         shift_up},
    };
    return entries;
}

std::span<const FigureDefinition> lamp_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"light.luminance_target", Subject::light, "Nominal luminance", Unit::cd_per_m2, kPf,
         "What the reference seat is to read in this kind of show.",
         "48 cd/m2 digital, 55 cd/m2 film",
         "ISO 26431-1:2008 (digital, 48 cd/m2), SMPTE ST 196 (film, 55 cd/m2), as reported",
         "{projector} is to read {value} in {format}", luminance_target},
        {"light.output_wanted", Subject::light, "Light wanted", Unit::fraction, kPf,
         "Light that brings the reference seat to the nominal luminance, over the light as it is.",
         "L_target / L", "derived: luminance goes in proportion to flux",
         "{projector} wants {value} of its light in {format}", output_wanted},
        {"light.lamp_current_wanted", Subject::light, "Lamp current wanted", Unit::ampere, kPf,
         "Current that brings the reference seat to the nominal luminance, if the flux of the lamp "
         "goes in proportion to its current.",
         "I L_target / L", "common practice, no source: flux in proportion to current",
         "{projector} wants a lamp current of {value} in {format}", of_lamp<lamp_current_wanted>},
    };
    return entries;
}

}  // namespace rakeline::study
