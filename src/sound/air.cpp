// SPDX-License-Identifier: MIT
#include "sound/air.hpp"

#include <cmath>

namespace rakeline::sound {

double Air::density_kg_m3() const {
    constexpr double kGasConstantDryAir = 287.05;  // J/(kg K)
    return pressure_pa / (kGasConstantDryAir * temperature_k());
}

double Air::sound_speed_m_s() const {
    return 343.2 * std::sqrt(temperature_k() / 293.15);
}

double Air::viscosity_pa_s() const {
    const double t = temperature_k();
    return 1.458e-6 * t * std::sqrt(t) / (t + 110.4);
}

}  // namespace rakeline::sound
