// SPDX-License-Identifier: MIT
#include "light/lamp_supply.hpp"
#include "light/reading_uncertainty.hpp"
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <algorithm>
#include <vector>

/// From the lamp to the opening, factor by factor in the light's own order, and how well the
/// reading at the end is known.
namespace rakeline::study {
namespace {

using base::Unit;
using light::PictureLight;
using room::FluxChain;
using room::FluxTolerances;

/// The chain of a picture whose flux is not simply measured; null otherwise.
const FluxChain* chain_of(const Cell& c) {
    const FluxChain& chain = projector_of(c).flux;
    return light_of(c) && chain.entry == room::FluxEntry::chain ? &chain : nullptr;
}

void note_share(double share, Working& w) {
    w.input("u", "its standard uncertainty, a share of it", share, Unit::fraction);
}

/// A factor that the layout gives.
template <double FluxChain::*factor, double FluxTolerances::*share>
std::optional<double> given(const Cell& c, Working& w) {
    const FluxChain* chain = chain_of(c);
    if (!chain) return std::nullopt;
    note_share(chain->tolerances.*share, w);
    return chain->*factor;
}

std::optional<double> shutter(const Cell& c, Working& w) {
    const auto open = given<&FluxChain::shutter_fraction, &FluxTolerances::shutter>(c, w);
    if (open && projector_of(c).kind == room::SourceKind::digital)
        w.note("a digital machine has no shutter: its uncertainty does not count");
    return open;
}

std::optional<double> lamp_power(const Cell& c, Working& w) {
    const FluxChain& chain = projector_of(c).flux;
    if (!light_of(c)) return std::nullopt;
    w.input("U", "lamp voltage", chain.lamp_voltage_v, Unit::volt);
    w.input("I", "lamp current", chain.lamp_current_a, Unit::ampere);
    note_share(chain.tolerances.lamp_power, w);
    if (chain.entry == room::FluxEntry::measured)
        w.note("the flux is measured: this power is in no chain, but feeds supply and exhaust");
    return light::lamp_power_w(chain);
}

std::optional<double> lamp_flux_new(const Cell& c, Working& w) {
    const FluxChain* chain = chain_of(c);
    if (!chain) return std::nullopt;
    const double power = w.input("P", "lamp power", light::lamp_power_w(*chain), Unit::watt);
    note_share(chain->tolerances.lamp_efficacy, w);
    return power *
           w.input("e", "lamp efficacy, new", chain->lamp_efficacy_lm_w, Unit::lumen_per_watt);
}

std::optional<double> setting(const Cell& c, Working&) {
    const PictureLight* l = light_of(c);
    return l ? std::optional(l->setting_fraction) : std::nullopt;
}

std::optional<double> gate_in_use(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    const picture::ProjectedPicture& p = *picture_of(c);
    w.input("a", "width in use", p.gate_size_m.x, Unit::millimetre);
    w.input("h", "height in use", p.gate_size_m.y, Unit::millimetre);
    w.input("k_c", "lit corner over the peak", projector_of(c).flux.corner_fraction,
            Unit::fraction);
    return l->use_fraction;
}

std::optional<double> flux_in_opening(const Cell& c, Working& w) {
    const PictureLight* l = light_of(c);
    if (!l) return std::nullopt;
    w.input("F", "flux on the screen", l->flux_lm, Unit::lumen);
    w.input("A", "area of the opening", opening_of(c).area_m2, Unit::square_metre);
    return l->opening_flux_lm;
}

/// Factors of the reading of a cell that has one.
std::optional<std::vector<light::UncertainFactor>> factors_of(const Cell& c) {
    const PictureLight* l = light_of(c);
    if (!l || !l->reference_cdm2 || *l->reference_cdm2 <= 0.0) return std::nullopt;
    return light::reading_factors(projector_of(c), l->through_glass);
}

/// Few enough to be drawn while a hand hovers; their sampling error is said beside them.
constexpr int kTrials = 4000;
constexpr std::uint64_t kSeed = 1;

void note_draws(const std::vector<light::UncertainFactor>& factors, Working& w) {
    if (!w.recording()) return;
    const light::DrawnProduct drawn = light::drawn_product(factors, kTrials, kSeed);
    w.note("beside it, " + std::to_string(kTrials) + " random draws: standard uncertainty " +
           base::quantity_text(drawn.share, Unit::fraction) + ", 95 % between " +
           base::quantity_text(drawn.low, Unit::ratio) + " and " +
           base::quantity_text(drawn.high, Unit::ratio) + " of the reading");
    w.note(
        "draws leave about 1.1 % of the uncertainty open; a product leans upward, the "
        "first-order range does not");
}

std::optional<double> reading_uncertainty(const Cell& c, Working& w) {
    const auto factors = factors_of(c);
    if (!factors) return std::nullopt;
    for (const light::UncertainFactor& factor : *factors)
        w.input(factor.symbol, factor.what, factor.share, Unit::fraction);
    note_draws(*factors, w);
    return light::combined_share(*factors);
}

std::optional<double> bound(const Cell& c, Working& w, double sign) {
    const auto factors = factors_of(c);
    if (!factors) return std::nullopt;
    const double reading =
        w.input("L", "reference reading", *light_of(c)->reference_cdm2, Unit::cd_per_m2);
    const double u = w.input("u", "its relative standard uncertainty",
                             light::combined_share(*factors), Unit::fraction);
    return std::max(0.0, reading * (1.0 + sign * light::kCoverage * u));
}

std::optional<double> reading_low(const Cell& c, Working& w) {
    return bound(c, w, -1.0);
}
std::optional<double> reading_high(const Cell& c, Working& w) {
    return bound(c, w, 1.0);
}

constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kYours = "yours: the layout's own value";

std::vector<FigureDefinition> lamp_entries() {
    return {
        {"light.lamp_power", Subject::light, "Lamp power", Unit::watt, kPf,
         "Electrical power of the lamp, or of the whole light source of a laser machine.", "U I",
         kYours, "The lamp of {projector} takes {value} in {format}", of_lamp<lamp_power>},
        {"light.lamp_flux_new", Subject::light, "Lamp flux, new", Unit::lumen, kPf,
         "All round, of a new lamp at this power.", "P e", kYours,
         "The lamp of {projector} gives {value} when new in {format}", lamp_flux_new},
        {"light.ageing", Subject::light, "Ageing", Unit::fraction, kPf,
         "Flux of the lamp now over its flux when new.", "k_age", kYours,
         "The lamp of {projector} gives {value} of a new one's flux in {format}",
         given<&FluxChain::ageing_fraction, &FluxTolerances::ageing>},
        {"light.collection", Subject::light, "Collection", Unit::fraction, kPf,
         "Part of the lamp's flux that mirror or optics bring to the gate or imager.", "k_col",
         kYours, "{projector} collects {value} of the lamp's flux in {format}",
         given<&FluxChain::collection_fraction, &FluxTolerances::collection>},
    };
}

std::vector<FigureDefinition> machine_entries() {
    return {
        {"light.shutter", Subject::light, "Shutter", Unit::fraction, kPf,
         "Part of the time that the shutter is open.", "k_sh", kYours,
         "The shutter of {projector} passes {value} in {format}", shutter},
        {"light.gate_passes", Subject::light, "Gate or imager passes", Unit::fraction, kPf,
         "Transmission of the gate, or efficiency of the imager.", "k_gate", kYours,
         "The gate of {projector} passes {value} in {format}",
         given<&FluxChain::gate_fraction, &FluxTolerances::gate>},
        {"light.lens_passes", Subject::light, "Lens passes", Unit::fraction, kPf,
         "Transmittance of the lens.", "k_lens", kYours,
         "The lens of {projector} passes {value} in {format}",
         given<&FluxChain::lens_transmittance, &FluxTolerances::lens>},
        {"light.setting", Subject::light, "Setting passes", Unit::fraction, kPf,
         "Part of the most light that lens and iris pass in this format's setting.", "k_set",
         "yours: the format's light_fraction, taken as exact",
         "{projector} passes {value} of its light in {format}", setting},
        {"light.gate_in_use", Subject::light, "Light in the part in use", Unit::fraction, kPf,
         "Flux through the part of gate or imager that the format uses, over all of it.",
         "integral of rel over a by h / integral over the lit area",
         "derived: the gate's quadratic fall-off, exact integral",
         "{format} uses {value} of the light in the gate of {projector}", gate_in_use},
    };
}

}  // namespace

std::span<const FigureDefinition> chain_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = lamp_entries();
        const auto more = machine_entries();
        all.insert(all.end(), more.begin(), more.end());
        return all;
    }();
    return entries;
}

std::span<const FigureDefinition> reading_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"light.flux_in_opening", Subject::light, "Flux into the opening", Unit::lumen, kPf,
         "Flux on the screen that falls into the masked opening; the rest lights the masking.",
         "integral of E dA over the opening",
         "derived: conservation of flux, the opening mapped back to the gate, exact integral there",
         "{projector} brings {value} into the opening of {format}", flux_in_opening},
        {"light.reading_uncertainty", Subject::light, "Reading, uncertainty", Unit::fraction, kPf,
         "Standard uncertainty of the reference reading over the reading, first order, factors "
         "independent.",
         "u = sqrt(sum of u_i^2)",
         "JCGM 100:2008 (GUM), 5.1.6; beside it JCGM 101:2008, random draws",
         "The reading of {projector} in {format} is known to {value}", reading_uncertainty},
        {"light.reading_low", Subject::light, "Reading, at least", Unit::cd_per_m2, kPf,
         "Lower end of the range in which the true reading lies in about 95 of 100 rooms known "
         "like this one (k = 2).",
         "L (1 - 2 u), not below 0", "JCGM 100:2008 (GUM), 6.2 and 6.3.3",
         "{projector} may read as little as {value} in {format}", reading_low},
        {"light.reading_high", Subject::light, "Reading, at most", Unit::cd_per_m2, kPf,
         "Upper end of that range (k = 2).", "L (1 + 2 u)", "JCGM 100:2008 (GUM), 6.2 and 6.3.3",
         "{projector} may read as much as {value} in {format}", reading_high},
    };
    return entries;
}

}  // namespace rakeline::study
