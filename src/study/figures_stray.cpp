// SPDX-License-Identifier: MIT
#include "light/contrast.hpp"
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <vector>

/// Stray light, and the contrast that it leaves.
namespace rakeline::study {
namespace {

using base::Unit;

const light::StrayOnScreen& stray_of(const Cell& c) {
    return c.study.light.stray.at(static_cast<std::size_t>(c.format));
}

void record_room(const light::StrayOnScreen& s, Working& w) {
    w.input("A", "area of all surfaces", s.room.area_m2, Unit::square_metre);
    w.input("r", "their mean reflectance", s.room.mean_reflectance, Unit::fraction);
}

std::optional<double> stray_illuminance(const Cell& c, Working& w) {
    const light::StrayOnScreen& s = stray_of(c);
    const double direct = w.input("E_direct", "sum of F cos i / (4 pi r^2) over the house lights",
                                  s.direct_lx, Unit::lux);
    w.input("F", "flux of all house lights", s.house_flux_lm, Unit::lumen);
    record_room(s, w);
    if (c.study.layout().stray_light.lights.empty())
        w.note(
            "the layout has no light that stays on: exit signs and aisle lights go into "
            "stray_light");
    return direct + w.input("E_back", "F r / (A (1 - r))", s.returned_lx, Unit::lux);
}

std::optional<double> bounce(const Cell& c, Working& w) {
    const light::StrayOnScreen& s = stray_of(c);
    w.input("A_p", "area of the picture", s.room.picture_area_m2, Unit::square_metre);
    w.input("r_p", "its reflectance, holes counted", s.room.picture_reflectance, Unit::fraction);
    w.input("R_1", "of a picture of 1 lm/m2: first reflected by the hall", s.first.reflected_lm,
            Unit::lumen);
    w.input("R_2", "of that, straight back onto the picture", s.first.returned_lm, Unit::lumen);
    record_room(s, w);
    return s.bounce_fraction;
}

/// Luminances toward the reference seat, where it sees the picture's centre lit.
std::optional<light::Veil> veil_of(const Cell& c) {
    const light::PictureLight* l = light_of(c);
    if (!l || !l->reference_cdm2 || *l->reference_cdm2 <= 0.0) return std::nullopt;
    const light::StrayOnScreen& s = stray_of(c);
    const double mean_lx = l->opening_flux_lm / opening_of(c).area_m2;
    return light::Veil{
        .white_cdm2 = *l->reference_cdm2,
        .machine_contrast = projector_of(c).contrast,
        .bounce_cdm2 = s.bounce_fraction * mean_lx * s.room.picture_reflectance / base::kPi,
        .stray_cdm2 = s.stray_cdm2()};
}

void record_veil(const Cell& c, const light::Veil& v, Working& w) {
    const light::StrayOnScreen& s = stray_of(c);
    w.input("L", "reference reading of white", v.white_cdm2, Unit::cd_per_m2);
    w.input("C", "white over black of the machine alone", v.machine_contrast, Unit::ratio);
    w.input("b", "part of the mean light that comes back", s.bounce_fraction, Unit::fraction);
    w.input("B", "that as luminance, of full white", v.bounce_cdm2, Unit::cd_per_m2);
    w.input("S_direct", "house lights, straight", s.direct_cdm2, Unit::cd_per_m2);
    w.input("S", "house lights, straight and by way of the hall", v.stray_cdm2, Unit::cd_per_m2);
    w.note("yours in it: reflectances, house lights and the machine's contrast");
}

template <double (*of)(const light::Veil&)>
std::optional<double> of_veil(const Cell& c, Working& w) {
    const auto veil = veil_of(c);
    if (!veil) return std::nullopt;
    record_veil(c, *veil, w);
    return of(*veil);
}

constexpr Per kF{.format = true};
constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kModel =
    "derived: point lights; the picture's first bounce over the hall's surfaces by Lambert's "
    "polygon "
    "formula; an integrating room of diffuse surfaces after it (a model, no renderer)";

}  // namespace

std::span<const FigureDefinition> stray_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"light.stray_illuminance", Subject::light, "Stray light, centre", Unit::lux, kF,
         "On the picture's centre from the lights that stay on, straight and by way of the hall's "
         "surfaces.",
         "E_direct + E_back", kModel, "House lights put {value} on the screen in {format}",
         stray_illuminance},
        {"light.bounce_fraction", Subject::light, "Light that comes back", Unit::fraction, kF,
         "Part of a full white picture's own mean light that the hall sends back to the screen.",
         "r_p (R_2 / A_p + R_1 r / (A (1 - r)))", kModel,
         "The hall sends {value} of the picture's light back in {format}", bounce},
        {"light.black_level", Subject::light, "Black level", Unit::cd_per_m2, kPf,
         "What a black picture reads at the reference seat.", "K = (L + B) / C + S", kModel,
         "{projector} reads {value} in black in {format}", of_veil<light::black_cdm2>},
        {"light.sequential_contrast", Subject::light, "Contrast, white to black", Unit::count, kPf,
         "Full white picture over full black one, at the reference seat, stray light in both.",
         "(L + B + S) / K", kModel, "{projector} keeps a contrast of {value} in {format}",
         of_veil<light::sequential_contrast>},
        {"light.in_picture_contrast", Subject::light, "Contrast in a picture", Unit::count, kPf,
         "White over black squares of a chessboard, half of it white; stray light inside the lens "
         "is not in it.",
         "(L + m B + S) / (L / C + m B + S), m = (1 + 1/C) / 2", kModel,
         "{projector} keeps a contrast of {value} within a chessboard in {format}",
         of_veil<light::in_picture_contrast>},
    };
    return entries;
}

}  // namespace rakeline::study
