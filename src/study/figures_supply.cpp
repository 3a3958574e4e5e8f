// SPDX-License-Identifier: MIT
#include "light/lamp_supply.hpp"
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <algorithm>
#include <optional>
#include <vector>

/// The lamp that the room asks for, what feeds it, carries its heat off and pays for it.
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

std::optional<double> mains_power(const Cell& c, Working& w) {
    return record_power(c, w) / w.input("k", "lamp power over power from the mains",
                                        supply_of(c).efficiency_fraction, Unit::fraction);
}

std::optional<double> lamphouse_load(const Cell& c, Working& w) {
    return record_power(c, w) / w.input("P_most", "the largest lamp that the lamphouse takes",
                                        supply_of(c).lamp_power_most_w, Unit::watt);
}

std::optional<double> time_left(const Cell& c, Working& w) {
    record_ageing(c, w);
    record_end(c, w);
    w.input("t_life", "life of a lamp", supply_of(c).lamp_life_s, Unit::hour);
    return light::lamp_time_left_s(projector_of(c).flux, supply_of(c));
}

std::optional<double> exhaust_heat(const Cell& c, Working& w) {
    record_power(c, w);
    w.input("k_heat", "share of it that goes into the exhaust air", supply_of(c).heat_fraction,
            Unit::fraction);
    return light::exhaust_heat_w(projector_of(c).flux, supply_of(c));
}

double record_duct(const Cell& c, Working& w) {
    const double t = w.input("t", "air at the hall's temperature",
                             c.study.layout().hall.temperature_c, Unit::celsius);
    w.input("rho", "density of dry air there at 101.325 kPa, kg/m3", light::air_density_kg_m3(t),
            Unit::ratio);
    w.input("c_p", "heat of air, J/(kg K)", light::kAirHeat_j_kg_k, Unit::ratio);
    return w.input("Q", "heat into the exhaust air",
                   light::exhaust_heat_w(projector_of(c).flux, supply_of(c)), Unit::watt);
}

std::optional<double> exhaust_flow_needed(const Cell& c, Working& w) {
    const double heat_w = record_duct(c, w);
    const double rise = w.input("dT", "the most that the air may get warmer",
                                supply_of(c).exhaust_rise_most_k, Unit::kelvin);
    return light::exhaust_flow_needed_m3_s(heat_w, rise, c.study.layout().hall.temperature_c);
}

std::optional<double> exhaust_rise(const Cell& c, Working& w) {
    const double heat_w = record_duct(c, w);
    const double flow =
        w.input("V", "air that the duct draws", supply_of(c).exhaust_flow_m3_s, Unit::air_flow);
    return light::exhaust_rise_k(heat_w, flow, c.study.layout().hall.temperature_c);
}

std::optional<double> exhaust_load(const Cell& c, Working& w) {
    Working inner(false);
    return w.input("dT", "rise of the air in the duct", *exhaust_rise(c, inner), Unit::kelvin) /
           w.input("dT_most", "the most that it may be", supply_of(c).exhaust_rise_most_k,
                   Unit::kelvin);
}

light::ShowCost record_cost(const Cell& c, Working& w) {
    const room::Programme& programme = c.study.layout().programme;
    const light::ShowCost cost = light::show_cost(projector_of(c).flux, supply_of(c), programme);
    w.input("t", "lamp burning for one show", programme.show_s, Unit::hour);
    w.input("c_lamp", "price of a lamp times t / t_life", cost.lamp, Unit::money);
    w.input("c_energy", "P / k times t times the price of energy", cost.energy, Unit::money);
    w.note(programme.currency.empty() ? "in the layout's own money, which it does not name"
                                      : "in " + programme.currency);
    return cost;
}

std::optional<double> cost_show(const Cell& c, Working& w) {
    return record_cost(c, w).total();
}

std::optional<double> cost_year(const Cell& c, Working& w) {
    return record_cost(c, w).total() * w.input("n", "shows a year on this machine",
                                               c.study.layout().programme.shows_per_year,
                                               Unit::count);
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
         power_new},
        {"light.lamp_power_end", Subject::light, "Lamp power wanted, at end", Unit::watt, kPf,
         "The same of a lamp at the end of its life.", "P k_age L_target / (L k_end)", kNearNow,
         "{projector} wants {value} of a lamp at its end in {format}", power_end},
        {"light.lamp_size", Subject::light, "Lamp, usual size", Unit::watt, kPf,
         "Smallest usual xenon rating that keeps the nominal luminance to the end of its life; "
         "none "
         "above 12 kW.",
         "least rating >= P_end",
         "ratings from 900 W to 12 kW as reported, the steps between from memory",
         "{projector} wants a lamp of {value} for {format}", lamp_size},
        {"light.lamp_size_load", Subject::light, "Lamp wanted over lamphouse", Unit::fraction, kPf,
         "Power wanted at the end of the lamp's life over the largest lamp that the lamphouse "
         "takes.",
         "P_end / P_most", kNearNow,
         "To keep {format} bright to the lamp's end {projector} would want {value} of the largest "
         "lamp that its lamphouse takes",
         size_load},
        {"light.lamp_current_end", Subject::light, "Lamp current, at end", Unit::ampere, kPf,
         "Current that keeps the nominal luminance at the end of the lamp's life, at the layout's "
         "voltage.",
         "P_end / U", kNearNow, "{projector} wants {value} at its lamp's end in {format}",
         current_end},
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
        {"light.lamp_time_left", Subject::light, "Lamp, time left", Unit::hour, kP,
         "Until the flux has fallen to where the lamp is taken out, if it falls evenly over its "
         "life.",
         "t_life (k_age - k_end) / (1 - k_end), not below 0",
         "derived: flux falls in proportion to time (a real lamp loses more at first)",
         "The lamp of {projector} has {value} left", time_left},
    };
}

std::vector<FigureDefinition> supply_entries() {
    return {
        {"light.lamphouse_load", Subject::light, "Lamp over lamphouse", Unit::fraction, kP,
         "Lamp power over the largest lamp that the lamphouse takes.", "P / P_most",
         "yours: the layout's own values",
         "The lamp of {projector} stands at {value} of what its lamphouse takes", lamphouse_load},
        {"light.mains_power", Subject::light, "Power from the mains", Unit::watt, kP,
         "Power that lamp and supply draw together; pumps, fans and electronics come on top.",
         "P / k", "yours: the layout's own values", "{projector} draws {value} from the mains",
         mains_power},
        {"light.exhaust_heat", Subject::light, "Heat into the exhaust", Unit::watt, kP,
         "Lamp power that the exhaust air carries off.", "P k_heat",
         "yours: the layout's own values", "The lamp of {projector} puts {value} into its exhaust",
         exhaust_heat},
        {"light.exhaust_flow_needed", Subject::light, "Exhaust flow needed", Unit::air_flow, kP,
         "Air that keeps the rise in the duct at the most allowed.", "V = Q / (rho c_p dT)",
         "derived: steady energy balance; rho of dry air by the ideal gas law, R of ISO 2533; c_p "
         "from memory",
         "{projector} needs {value} of exhaust air", exhaust_flow_needed},
        {"light.exhaust_rise", Subject::light, "Exhaust rise", Unit::kelvin, kP,
         "By which the air in the duct gets warmer at the flow that it draws.",
         "dT = Q / (rho c_p V)",
         "derived: steady energy balance; rho of dry air by the ideal gas law, R of ISO 2533; c_p "
         "from memory",
         "The exhaust of {projector} gets warmer by {value}", exhaust_rise},
        {"light.exhaust_load", Subject::light, "Exhaust rise over the most", Unit::fraction, kP,
         "Rise of the air in the duct over the most that the layout allows.", "dT / dT_most",
         "derived: steady energy balance",
         "The exhaust air of {projector} gets warmer by {value} of the most allowed", exhaust_load},
        {"light.cost_show", Subject::light, "Light, cost of a show", Unit::money, kP,
         "Lamp wear and energy of one show, in the layout's money.", "c_lamp + c_energy",
         "derived: price times time over life; prices are yours",
         "A show on {projector} costs {value} of light", cost_show},
        {"light.cost_year", Subject::light, "Light, cost of a year", Unit::money, kP,
         "The same for all shows of a year on this machine, in the layout's money.",
         "n (c_lamp + c_energy)", "derived: price times time over life; prices are yours",
         "A year on {projector} costs {value} of light", cost_year},
    };
}

}  // namespace

std::span<const FigureDefinition> supply_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = lamp_wanted_entries();
        for (const auto& more : {life_entries(), supply_entries()})
            all.insert(all.end(), more.begin(), more.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
