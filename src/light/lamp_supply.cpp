// SPDX-License-Identifier: MIT
#include "light/lamp_supply.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <array>

namespace rakeline::light {
namespace {

constexpr std::array kUsualLamps_w = {900.0,  1000.0, 1200.0, 1600.0, 2000.0, 2500.0,  3000.0,
                                      4000.0, 5000.0, 6000.0, 7000.0, 8000.0, 10000.0, 12000.0};
constexpr double kPressure_pa = 101325.0;
constexpr double kAirConstant_j_kg_k = 287.053;
constexpr double kZeroCelsius_k = 273.15;
constexpr double kJoulesPerKilowattHour = 3.6e6;

}  // namespace

double lamp_power_w(const room::FluxChain& chain) {
    return chain.lamp_voltage_v * chain.lamp_current_a;
}

double lamp_power_wanted_w(const room::FluxChain& chain,
                           double light_wanted,
                           double flux_fraction) {
    RL_ASSERT(flux_fraction > 0.0);
    return lamp_power_w(chain) * light_wanted * chain.ageing_fraction / flux_fraction;
}

std::optional<double> usual_lamp_w(double power_w) {
    // A lamp that is wanted at exactly its rating may come out a last bit above it.
    constexpr double kRounding = 1.0 + 1e-12;
    const auto found = std::find_if(kUsualLamps_w.begin(), kUsualLamps_w.end(),
                                    [&](double rating) { return power_w <= rating * kRounding; });
    if (found == kUsualLamps_w.end()) return std::nullopt;
    return *found;
}

std::optional<double> lamp_time_left_s(const room::FluxChain& chain, const room::Supply& supply) {
    const double end = supply.end_flux_fraction;
    if (end >= 1.0) return std::nullopt;
    return supply.lamp_life_s * std::max(0.0, chain.ageing_fraction - end) / (1.0 - end);
}

double air_density_kg_m3(double temperature_c) {
    return kPressure_pa / (kAirConstant_j_kg_k * (temperature_c + kZeroCelsius_k));
}

double exhaust_heat_w(const room::FluxChain& chain, const room::Supply& supply) {
    return lamp_power_w(chain) * supply.heat_fraction;
}

double exhaust_flow_needed_m3_s(double heat_w, double rise_k, double temperature_c) {
    return heat_w / (air_density_kg_m3(temperature_c) * kAirHeat_j_kg_k * rise_k);
}

double exhaust_rise_k(double heat_w, double flow_m3_s, double temperature_c) {
    return heat_w / (air_density_kg_m3(temperature_c) * kAirHeat_j_kg_k * flow_m3_s);
}

ShowCost show_cost(const room::FluxChain& chain,
                   const room::Supply& supply,
                   const room::Programme& programme) {
    const double energy_j = lamp_power_w(chain) / supply.efficiency_fraction * programme.show_s;
    return {.lamp = supply.lamp_price * programme.show_s / supply.lamp_life_s,
            .energy = energy_j / kJoulesPerKilowattHour * programme.energy_price};
}

}  // namespace rakeline::light
