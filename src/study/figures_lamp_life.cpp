// SPDX-License-Identifier: MIT
#include "light/lamp_supply.hpp"
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <algorithm>
#include <optional>
#include <vector>

/// The lamp that the room asks for, and what is left of the one that is in.
namespace rakeline::study {
namespace {

using base::Unit;

const room::Supply& supply_of(const Cell& c) {
    return projector_of(c).supply;
}

/// Light wanted over light now, where the reference seat sees some.
std::optional<double> light_wanted(const Cell& c, Working& w) {
    const light::PictureLight* l = light_of(c);
    if (!l || !l->flux_needed_lm) return std::nullopt;
    w.input("L", "reference reading now", *l->reference_cdm2, Unit::cd_per_m2);
    w.input("L_target", "nominal luminance of this kind of show", l->target_cdm2, Unit::cd_per_m2);
    return l->target_cdm2 / *l->reference_cdm2;
}

double record_power(const Cell& c, Working& w) {
    return w.input("P", "lamp power now, U I", light::lamp_power_w(projector_of(c).flux),
                   Unit::watt);
}

void record_ageing(const Cell& c, Working& w) {
    w.input("k_age", "flux now over flux when new", projector_of(c).flux.ageing_fraction,
            Unit::fraction);
}

double record_end(const Cell& c, Working& w) {
    return w.input("k_end", "flux at which the lamp is taken out, over new",
                   supply_of(c).end_flux_fraction, Unit::fraction);
}

std::optional<double> power_new(const Cell& c, Working& w) {
    const auto wanted = light_wanted(c, w);
    if (!wanted) return std::nullopt;
    record_power(c, w);
    record_ageing(c, w);
    return light::lamp_power_wanted_w(projector_of(c).flux, *wanted, 1.0);
}

std::optional<double> power_end(const Cell& c, Working& w) {
    const auto wanted = light_wanted(c, w);
    if (!wanted) return std::nullopt;
    record_power(c, w);
    record_ageing(c, w);
    return light::lamp_power_wanted_w(projector_of(c).flux, *wanted, record_end(c, w));
}

std::optional<double> lamp_size(const Cell& c, Working& w) {
    if (projector_of(c).flux.lamp != room::LampKind::xenon) return std::nullopt;
    Working inner(false);
    const auto power = power_end(c, inner);
    if (!power) return std::nullopt;
    w.input("P_end", "power wanted at the end of its life", *power, Unit::watt);
    w.note("the maker's table for lamp, lamphouse and supply decides, not this step");
    return light::usual_lamp_w(*power);
}

std::optional<double> size_load(const Cell& c, Working& w) {
    Working inner(false);
    const auto power = power_end(c, inner);
    if (!power) return std::nullopt;
    return w.input("P_end", "power wanted at the end of the lamp's life", *power, Unit::watt) /
           w.input("P_most", "the largest lamp that the lamphouse takes",
                   supply_of(c).lamp_power_most_w, Unit::watt);
}

std::optional<double> current_end(const Cell& c, Working& w) {
    Working inner(false);
    const auto power = power_end(c, inner);
    if (!power || projector_of(c).flux.lamp != room::LampKind::xenon) return std::nullopt;
    return w.input("P_end", "power wanted at the end of the lamp's life", *power, Unit::watt) /
           w.input("U", "lamp voltage", projector_of(c).flux.lamp_voltage_v, Unit::volt);
}

/// Reading with a lamp that gives `fraction` of its flux when new.
std::optional<double> reading_at(const Cell& c, Working& w, double fraction) {
    const light::PictureLight* l = light_of(c);
    if (!l || !l->reference_cdm2) return std::nullopt;
    const room::FluxChain& chain = projector_of(c).flux;
    w.input("L", "reference reading now", *l->reference_cdm2, Unit::cd_per_m2);
    record_ageing(c, w);
    if (chain.entry == room::FluxEntry::measured)
        w.note("the measured flux is taken to be that of a lamp at k_age");
    return *l->reference_cdm2 / chain.ageing_fraction * fraction;
}

std::optional<double> reading_new(const Cell& c, Working& w) {
    return reading_at(c, w, 1.0);
}
std::optional<double> reading_end(const Cell& c, Working& w) {
    return reading_at(c, w, record_end(c, w));
}

/// The least reading that the room's limits allow a machine of this kind.
std::optional<double> least_reading(const Cell& c) {
    std::optional<double> least;
    for (const room::Limit& limit : c.study.brief->limits.limits) {
        if (limit.figure != "light.luminance_reference" || !limit.least) continue;
        if (limit.source_kind && *limit.source_kind != projector_of(c).kind) continue;
        least = std::max(least.value_or(0.0), *limit.least);
    }
    return least;
}

std::optional<double> end_margin(const Cell& c, Working& w) {
    const auto least = least_reading(c);
    Working inner(false);
    const auto reading = reading_end(c, inner);
    if (!least || *least <= 0.0 || !reading) return std::nullopt;
    return w.input("L_end", "reading at the end of the lamp's life", *reading, Unit::cd_per_m2) /
           w.input("L_least", "least reading that the room's limits allow", *least,
                   Unit::cd_per_m2);
}

std::optional<double> time_left(const Cell& c, Working& w) {
    record_ageing(c, w);
    record_end(c, w);
    w.input("t_life", "life of a lamp", supply_of(c).lamp_life_s, Unit::hour);
    return light::lamp_time_left_s(projector_of(c).flux, supply_of(c));
}

constexpr Per kP{.projector = true};
constexpr Per kPf{.projector = true, .format = true};
constexpr const char* kNearNow =
    "common practice, no source: flux in proportion to power near the present one";

std::vector<FigureDefinition> lamp_wanted_entries() {
    return {
        {"light.lamp_power_new", Subject::light, "Lamp power wanted, new", Unit::watt, kPf,
         "Power at which a new lamp brings the reference seat to the nominal luminance.",
         "P k_age L_target / L", kNearNow, "{projector} wants {value} of a new lamp in {format}",
         of_lamp<power_new>},
        {"light.lamp_power_end", Subject::light, "Lamp power wanted, at end", Unit::watt, kPf,
         "The same of a lamp at the end of its life.", "P k_age L_target / (L k_end)", kNearNow,
         "{projector} wants {value} of a lamp at its end in {format}", of_lamp<power_end>},
        {"light.lamp_size", Subject::light, "Lamp, usual size", Unit::watt, kPf,
         "Smallest usual xenon rating that keeps the nominal luminance to the end of its life; "
         "none "
         "above 12 kW.",
         "least rating >= P_end",
         "ratings from 900 W to 12 kW as reported, the steps between from memory",
         "{projector} wants a lamp of {value} for {format}", of_lamp<lamp_size>},
        {"light.lamp_size_load", Subject::light, "Lamp wanted over lamphouse", Unit::fraction, kPf,
         "Power wanted at the end of the lamp's life over the largest lamp that the lamphouse "
         "takes.",
         "P_end / P_most", kNearNow,
         "To keep {format} bright to the lamp's end {projector} would want {value} of the largest "
         "lamp that its lamphouse takes",
         of_lamp<size_load>},
        {"light.lamp_current_end", Subject::light, "Lamp current, at end", Unit::ampere, kPf,
         "Current that keeps the nominal luminance at the end of the lamp's life, at the layout's "
         "voltage.",
         "P_end / U", kNearNow, "{projector} wants {value} at its lamp's end in {format}",
         of_lamp<current_end>},
    };
}

std::vector<FigureDefinition> life_entries() {
    return {
        {"light.reading_new", Subject::light, "Reading, new lamp", Unit::cd_per_m2, kPf,
         "At the reference seat with a new lamp at the present power.", "L / k_age",
         "derived: luminance goes in proportion to flux",
         "{projector} would read {value} with a new lamp in {format}", reading_new},
        {"light.reading_end", Subject::light, "Reading, lamp at its end", Unit::cd_per_m2, kPf,
         "At the reference seat when the lamp is taken out, at the present power.",
         "L k_end / k_age", "derived: luminance goes in proportion to flux",
         "{projector} will read {value} at its lamp's end in {format}", reading_end},
        {"light.end_margin", Subject::light, "Margin at the lamp's end", Unit::ratio, kPf,
         "Reading when the lamp is taken out, at the present power, over the least that the room's "
         "limits allow.",
         "L_end / L_least", "derived: luminance goes in proportion to flux",
         "At its lamp's end {projector} reads {value} of the least allowed in {format}",
         end_margin},
        {"light.lamp_time_remaining", Subject::light, "Lamp, time left", Unit::hour, kP,
         "Until the flux has fallen to where the lamp is taken out, if it falls evenly over its "
         "life.",
         "t_life (k_age - k_end) / (1 - k_end), not below 0",
         "derived: flux falls in proportion to time (a real lamp loses more at first)",
         "The lamp of {projector} has {value} left", time_left},
    };
}

}  // namespace

std::span<const FigureDefinition> lamp_life_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = lamp_wanted_entries();
        const auto more = life_entries();
        all.insert(all.end(), more.begin(), more.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
