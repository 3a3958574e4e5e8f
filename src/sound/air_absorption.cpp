// SPDX-License-Identifier: MIT
#include "sound/air_absorption.hpp"

#include <cmath>

namespace rakeline::sound {
namespace {

constexpr double kReferenceTemperatureK = 293.15;
constexpr double kReferencePressurePa = 101325.0;

/// Molar concentration of water vapour, %.
double vapour_percent(const Air& air) {
    const double exponent = -6.8346 * std::pow(273.16 / air.temperature_k(), 1.261) + 4.6151;
    const double pressure = air.pressure_pa / kReferencePressurePa;
    return 100.0 * air.humidity_fraction * std::pow(10.0, exponent) / pressure;
}

/// What one gas adds: largest share of the wave lost where f is its relaxation frequency.
double relaxation(double frequency_hz, double relaxation_hz) {
    return 1.0 / (relaxation_hz + frequency_hz * frequency_hz / relaxation_hz);
}

}  // namespace

double air_absorption_db_per_m(double frequency_hz, const Air& air) {
    const double temperature = air.temperature_k();
    const double warmth = temperature / kReferenceTemperatureK;
    const double pressure = air.pressure_pa / kReferencePressurePa;
    const double h = vapour_percent(air);
    const double oxygen_hz = pressure * (24.0 + 4.04e4 * h * (0.02 + h) / (0.391 + h));
    const double nitrogen_hz =
        pressure / std::sqrt(warmth) *
        (9.0 + 280.0 * h * std::exp(-4.170 * (1.0 / std::cbrt(warmth) - 1.0)));

    const double classical = 1.84e-11 * std::sqrt(warmth) / pressure;
    const double oxygen =
        0.01275 * std::exp(-2239.1 / temperature) * relaxation(frequency_hz, oxygen_hz);
    const double nitrogen =
        0.1068 * std::exp(-3352.0 / temperature) * relaxation(frequency_hz, nitrogen_hz);
    return 8.686 * frequency_hz * frequency_hz *
           (classical + std::pow(warmth, -2.5) * (oxygen + nitrogen));
}

}  // namespace rakeline::sound
