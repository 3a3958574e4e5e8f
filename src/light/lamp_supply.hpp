// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <optional>

/// What the lamp has to be, what feeds it, what carries its heat off and what it costs. An aid to
/// planning: circuits, ducts and lamps are for the makers, local codes and licensed practice.
namespace rakeline::light {

/// P = U I, W: of the lamp, or of the whole light source of a laser machine.
double lamp_power_w(const room::FluxChain& chain);

/// Power that brings the reading to `light_wanted` times the present one when the lamp gives
/// `flux_fraction` of its flux when new, W:
///
///     P' = P * light_wanted * ageing / flux_fraction
///
/// Holds near the present power, where flux goes in proportion to it. Source: common practice, no
/// source (a larger lamp's efficacy and arc differ: the maker's table decides).
double lamp_power_wanted_w(const room::FluxChain& chain, double light_wanted, double flux_fraction);

/// The smallest usual xenon rating of `power_w` or more; nothing above the largest, 12 kW.
/// Source: range 900 W to 12 kW as reported; the steps between from memory.
std::optional<double> usual_lamp_w(double power_w);

/// Time until the flux falls to Supply::end_flux_fraction, if it falls in proportion to the time
/// burnt, s: life * (ageing - end) / (1 - end), 0 for a lamp past its end; nothing where end = 1.
/// Source: derived; a real lamp loses more in its first hours.
std::optional<double> lamp_time_left_s(const room::FluxChain& chain, const room::Supply& supply);

/// Density of dry air at 101,325 Pa, kg/m3: p / (R T), R = 287.053 J/(kg K).
/// Source: ideal gas law; R as in the standard atmosphere (ISO 2533). Damp air at 20 degrees is up
/// to 1 % lighter.
double air_density_kg_m3(double temperature_c);

/// c_p of air at room temperature and atmospheric pressure, J/(kg K). Source: handbook value, from
/// memory (1005 to 1007 between 0 and 50 degrees).
inline constexpr double kAirHeat_j_kg_k = 1006.0;

/// Lamp heat into the duct, W: P * heat_fraction.
double exhaust_heat_w(const room::FluxChain& chain, const room::Supply& supply);

/// V = Q / (rho c_p dT), m3/s, and the rise dT = Q / (rho c_p V), K; air drawn at the hall's
/// temperature, where rho and the flow are taken. Source: energy balance of the duct, steady.
double exhaust_flow_needed_m3_s(double heat_w, double rise_k, double temperature_c);
double exhaust_rise_k(double heat_w, double flow_m3_s, double temperature_c);

/// In the layout's money.
struct ShowCost {
    double lamp = 0.0;    ///< price * show / life
    double energy = 0.0;  ///< lamp power / supply efficiency * show * price of energy
    double total() const { return lamp + energy; }
};
ShowCost show_cost(const room::FluxChain& chain,
                   const room::Supply& supply,
                   const room::Programme& programme);

}  // namespace rakeline::light
