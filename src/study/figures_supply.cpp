// SPDX-License-Identifier: MIT
#include "light/lamp_supply.hpp"
#include "study/light_cells.hpp"
#include "study/picture_cells.hpp"

#include <optional>
#include <vector>

/// What feeds a lamp, carries its heat off and pays for it.
namespace rakeline::study {
namespace {

using base::Unit;

const room::Supply& supply_of(const Cell& c) {
    return projector_of(c).supply;
}

double record_power(const Cell& c, Working& w) {
    return w.input("P", "lamp power now, U I", light::lamp_power_w(projector_of(c).flux),
                   Unit::watt);
}

std::optional<double> mains_power(const Cell& c, Working& w) {
    return record_power(c, w) / w.input("k", "lamp power over power from the mains",
                                        supply_of(c).efficiency_fraction, Unit::fraction);
}

std::optional<double> lamphouse_load(const Cell& c, Working& w) {
    return record_power(c, w) / w.input("P_most", "the largest lamp that the lamphouse takes",
                                        supply_of(c).lamp_power_most_w, Unit::watt);
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

}  // namespace

std::span<const FigureDefinition> supply_figures() {
    static const std::vector<FigureDefinition> entries = {

        {"light.lamphouse_load", Subject::light, "Lamp over lamphouse", Unit::fraction, kP,
         "Lamp power over the largest lamp that the lamphouse takes.", "P / P_most",
         "yours: the layout's own values",
         "The lamp of {projector} stands at {value} of what its lamphouse takes",
         of_lamp<lamphouse_load>},
        {"light.mains_power", Subject::light, "Power from the mains", Unit::watt, kP,
         "Power that lamp and supply draw together; pumps, fans and electronics come on top.",
         "P / k", "yours: the layout's own values", "{projector} draws {value} from the mains",
         of_lamp<mains_power>},
        {"light.exhaust_heat", Subject::light, "Heat into the exhaust", Unit::watt, kP,
         "Lamp power that the exhaust air carries off.", "P k_heat",
         "yours: the layout's own values", "The lamp of {projector} puts {value} into its exhaust",
         of_exhaust<exhaust_heat>},
        {"light.exhaust_flow_needed", Subject::light, "Exhaust flow needed", Unit::air_flow, kP,
         "Air that keeps the rise in the duct at the most allowed.", "V = Q / (rho c_p dT)",
         "derived: steady energy balance; rho of dry air by the ideal gas law, R of ISO 2533; c_p "
         "from memory",
         "{projector} needs {value} of exhaust air", of_exhaust<exhaust_flow_needed>},
        {"light.exhaust_rise", Subject::light, "Exhaust rise", Unit::kelvin, kP,
         "By which the air in the duct gets warmer at the flow that it draws.",
         "dT = Q / (rho c_p V)",
         "derived: steady energy balance; rho of dry air by the ideal gas law, R of ISO 2533; c_p "
         "from memory",
         "The exhaust of {projector} gets warmer by {value}", of_exhaust<exhaust_rise>},
        {"light.exhaust_load", Subject::light, "Exhaust rise over the most", Unit::fraction, kP,
         "Rise of the air in the duct over the most that the layout allows.", "dT / dT_most",
         "derived: steady energy balance",
         "The exhaust air of {projector} gets warmer by {value} of the most allowed",
         of_exhaust<exhaust_load>},
        {"light.cost_show", Subject::light, "Light, cost of a show", Unit::money, kP,
         "Lamp wear and energy of one show, in the layout's money.", "c_lamp + c_energy",
         "derived: price times time over life; prices are yours",
         "A show on {projector} costs {value} of light", cost_show},
        {"light.cost_year", Subject::light, "Light, cost of a year", Unit::money, kP,
         "The same for all shows of a year on this machine, in the layout's money.",
         "n (c_lamp + c_energy)", "derived: price times time over life; prices are yours",
         "A year on {projector} costs {value} of light", cost_year},
    };
    return entries;
}

}  // namespace rakeline::study
