// SPDX-License-Identifier: MIT
#include "study/light_cells.hpp"

#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;
using light::PictureLight;

std::optional<double> flux_lens(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    const room::FluxChain& chain =
        c.study.layout().projectors.at(static_cast<std::size_t>(c.projector)).flux;
    if (chain.entry == room::FluxEntry::measured) {
        w.note("the flux is a measured or rated value of the layout, no chain");
        w.input("F_m", "as measured", chain.measured_flux_lm, Unit::lumen);
        w.input("k_set", "what the format's setting passes", l->setting_fraction, Unit::fraction);
        return l->chain_flux_lm;
    }
    w.input("U", "lamp voltage", chain.lamp_voltage_v, Unit::volt);
    w.input("I", "lamp current", chain.lamp_current_a, Unit::ampere);
    w.input("e", "lamp efficacy, new", chain.lamp_efficacy_lm_w, Unit::lumen_per_watt);
    w.input("k_age", "ageing", chain.ageing_fraction, Unit::fraction);
    w.input("F_lamp", "U I e k_age", l->lamp_flux_lm, Unit::lumen);
    w.input("k_col", "collection", chain.collection_fraction, Unit::fraction);
    w.input("k_sh", "shutter", chain.shutter_fraction, Unit::fraction);
    w.input("k_gate", "gate or imager", chain.gate_fraction, Unit::fraction);
    w.input("k_lens", "lens transmittance", chain.lens_transmittance, Unit::fraction);
    w.input("k_set", "what the format's setting passes", l->setting_fraction, Unit::fraction);
    return l->chain_flux_lm;
}

std::optional<double> port_transmittance(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    const room::Port& port =
        c.study.layout().projectors.at(static_cast<std::size_t>(c.projector)).port;
    w.input("m", "panes", port.panes, Unit::count);
    w.input("n", "refractive index", port.glass_index, Unit::ratio);
    w.input("i", "angle of incidence on the glass", l->port_incidence_rad, Unit::radian);
    w.input("t", "thickness of a pane", port.glass_thickness_m, Unit::millimetre);
    w.input("k", "absorption per metre of glass", port.glass_absorption_per_m, Unit::ratio);
    if (port.coated_reflectance) {
        w.input("R", "reflectance of a coated surface", *port.coated_reflectance, Unit::fraction);
    }
    return l->port_transmittance;
}

std::optional<double> flux(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    const double lens =
        w.input("F_lens", "out of the lens, whole gate", l->chain_flux_lm, Unit::lumen);
    const double use =
        w.input("k_use", "through the part of the gate in use", l->use_fraction, Unit::fraction);
    return lens * use * w.input("T", "port transmittance", l->port_transmittance, Unit::fraction);
}

std::optional<double> illuminance(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    w.input("F", "flux reaching the surface", l->flux_lm, Unit::lumen);
    return l->illuminance_lx[light::kCentre];
}

std::optional<double> luminance(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    w.input("E", "illuminance at the picture's centre", l->illuminance_lx[light::kCentre],
            Unit::lux);
    w.input("G", "gain toward this seat",
            l->gain.at(static_cast<std::size_t>(c.index))[light::kCentre], Unit::ratio);
    return light::luminance_cdm2(*l, c.index, light::kCentre);
}

std::optional<double> luminance_reference(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l || !l->reference_cdm2) return std::nullopt;
    w.note("read from seat " +
           c.study.seats.seats.at(static_cast<std::size_t>(*c.study.reference_seat)).name);
    note_stereo(c, w);
    w.input("E", "illuminance at the picture's centre", l->illuminance_lx[light::kCentre],
            Unit::lux);
    w.input("G", "gain toward the reference seat",
            l->gain.at(static_cast<std::size_t>(*c.study.reference_seat))[light::kCentre],
            Unit::ratio);
    return l->reference_cdm2;
}

std::optional<double> side_ratio(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    record_points(*l, c.index,
                  {light::kCentre, light::kLeft, light::kRight, light::kTop, light::kBottom}, w);
    return light::side_ratio(*l, c.index);
}

std::optional<double> corner_ratio(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    record_points(*l, c.index,
                  {light::kCentre, light::kTopLeft, light::kTopRight, light::kBottomRight,
                   light::kBottomLeft},
                  w);
    return light::corner_ratio(*l, c.index);
}

std::optional<double> flux_needed(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l || !l->flux_needed_lm) return std::nullopt;
    w.input("F", "flux reaching the surface now", l->flux_lm, Unit::lumen);
    w.input("L", "reference reading now", *l->reference_cdm2, Unit::cd_per_m2);
    w.input("L_target", "nominal luminance of this kind of show", l->target_cdm2, Unit::cd_per_m2);
    return l->flux_needed_lm;
}

void record_body(const room::ScreenSurface& s, Working& w) {
    if (s.lobe != room::LobeKind::matte && !s.gain_table.empty()) {
        w.input("G_0", "measured gain in the lobe's middle", s.gain_table.front().gain,
                Unit::ratio);
        w.note("integrated over the measured gains; beyond the last angle the last gain is kept");
        return;
    }
    w.input("G_0", "peak gain", s.peak_gain, Unit::ratio);
    w.input("a_1/2", "half-gain angle", s.half_gain_angle_rad, Unit::radian);
}

std::optional<double> screen_reflectance(const Cell& c, Working& w) {
    const room::ScreenSurface& s = c.study.layout().screen.surface;
    record_body(s, w);
    if (s.retro_gain > 0.0) w.input("G_r", "retro part", s.retro_gain, Unit::ratio);
    return c.study.light.lobe_reflectance;
}

std::optional<double> open_area(const Cell& c, Working& w) {
    const room::Perforation& p = c.study.layout().screen.perforation;
    w.input("d", "hole diameter", p.hole_diameter_m, Unit::millimetre);
    w.input("b", "hole pitch", p.pitch_m, Unit::millimetre);
    return c.study.light.open_area;
}

constexpr Per kPf{.projector = true, .format = true};
constexpr Per kPfs{.projector = true, .format = true, .seat = true};

std::vector<FigureDefinition> flux_entries() {
    return {
        {"light.flux_lens", Subject::light, "Flux out of the lens", Unit::lumen, kPf,
         "With the whole lit gate or imager in use, no film, shutter running, in the format's "
         "setting.",
         "U I e k_age k_col k_sh k_gate k_lens k_set, or F_m k_set",
         "derived: product of the chain", "{projector} sends {value} out of its lens in {format}",
         flux_lens},
        {"light.port_transmittance", Subject::light, "Port transmittance", Unit::fraction, kPf,
         "Of the port's panes at the real angle of incidence.",
         "T = (1-R)^2 t / (1 - R^2 t^2) for each polarisation, then the mean; panes add",
         "Fresnel equations, incoherent inter-reflection",
         "The port of {projector} passes {value} in {format}", port_transmittance},
        {"light.flux", Subject::light, "Flux on the screen", Unit::lumen, kPf,
         "Luminous flux that reaches the picture surface.", "F = F_lens k_use T",
         "derived: product of the chain", "{projector} brings {value} to the screen in {format}",
         flux},
        {"light.flux_needed", Subject::light, "Flux needed", Unit::lumen, kPf,
         "Flux on the screen that brings the reference reading to the nominal luminance.",
         "F L_target / L",
         "ISO 26431-1:2008 (digital, 48 cd/m2), SMPTE ST 196 (film, 55 cd/m2), as reported",
         "{projector} needs {value} on the screen in {format}", flux_needed},
        {"light.illuminance", Subject::light, "Illuminance, centre", Unit::lux, kPf,
         "On the surface at the picture's centre, through the map's local area ratio.",
         "E = F_lens T rel(g) / (integral of rel dA  dA_screen/dA_gate)",
         "derived: conservation of flux through the picture map",
         "The centre gets {value} from {projector} in {format}", illuminance},
    };
}

std::vector<FigureDefinition> luminance_entries() {
    return {
        {"light.luminance_reference", Subject::light, "Luminance, reference", Unit::cd_per_m2, kPf,
         "At the picture's centre toward the reference seat.", "L = E G / pi",
         "ISO 26431-1:2008, as reported: centre of the row nearest the auditorium's centre",
         "The reference seat reads {value} from {projector} in {format}", luminance_reference},
        {"light.luminance", Subject::light, "Luminance, centre", Unit::cd_per_m2, kPfs,
         "At the picture's centre toward the seat.", "L = E G / pi",
         "definition of gain against the perfect reflecting diffuser",
         "Seat {seat} sees {value} at the centre from {projector} in {format}", luminance},
        {"light.side_ratio", Subject::light, "Sides over centre", Unit::fraction, kPfs,
         "Worst of the four side points over the centre, toward the seat.",
         "min(L_left, L_right, L_top, L_bottom) / L_centre",
         "points 5 % inside the edges: common practice, no source",
         "The sides are at {value} of the centre from seat {seat}, {projector} in {format}",
         side_ratio},
        {"light.corner_ratio", Subject::light, "Corners over centre", Unit::fraction, kPfs,
         "Worst of the four corner points over the centre, toward the seat.",
         "min(L_corner) / L_centre", "points 5 % inside the edges: common practice, no source",
         "The corners are at {value} of the centre from seat {seat}, {projector} in {format}",
         corner_ratio},
        {"light.screen_reflectance",
         Subject::light,
         "Screen reflectance",
         Unit::fraction,
         {},
         "All light that the surface as described would send back; over 100 % it claims too much.",
         "2 integral of G sin a cos a da",
         "conservation of energy",
         "The surface as described reflects {value} of the light",
         screen_reflectance},
        {"light.open_area",
         Subject::light,
         "Open area of the holes",
         Unit::fraction,
         {},
         "Part of the sheet that is hole and reflects nothing; it is in the gain already where "
         "that "
         "was measured on a perforated sheet.",
         "pi d^2 / (4 b^2) square, pi d^2 / (2 sqrt 3 b^2) staggered, d^2 / b^2 woven",
         "derived: hole lattice",
         "The holes take {value} of the sheet",
         open_area},
    };
}

}  // namespace

std::span<const FigureDefinition> light_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        const auto fluxes = flux_entries();
        const auto luminances = luminance_entries();
        std::vector<FigureDefinition> all;
        for (const std::span<const FigureDefinition> part :
             {chain_figures(), std::span(fluxes), std::span(luminances), reading_figures(),
              luminance_figures(), stereo_figures(), stray_figures(), lamp_figures(),
              lamp_life_figures(), supply_figures()})
            all.insert(all.end(), part.begin(), part.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
