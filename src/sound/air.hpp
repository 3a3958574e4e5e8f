// SPDX-License-Identifier: MIT
#pragma once

namespace rakeline::sound {

/// Air at the hall's temperature, by default at one standard atmosphere.
struct Air {
    double temperature_c = 20.0;
    double humidity_fraction = 0.5;  ///< relative humidity, 0 to 1
    double pressure_pa = 101325.0;
    bool operator==(const Air&) const = default;

    /// rho = p / (R_s T), R_s = 287.05 J/(kg K): dry ideal gas, 1.204 kg/m3 at 20 degC. Moist air
    /// is lighter by up to 1 % at 20 degC, which is left out.
    double density_kg_m3() const;

    /// c = 343.2 sqrt(T / 293.15) m/s. Source: ISO 9613-1:1993 (with T0 = 293.15 K).
    double sound_speed_m_s() const;

    /// eta = 1.458e-6 T^1.5 / (T + 110.4) Pa s, 1.81e-5 at 20 degC. Source: Sutherland's law with
    /// the constants of the 1976 standard atmosphere, values from memory.
    double viscosity_pa_s() const;

    /// rho c, the impedance of a plane wave: 413 Pa s/m at 20 degC.
    double impedance_pa_s_m() const { return density_kg_m3() * sound_speed_m_s(); }

    double temperature_k() const { return temperature_c + 273.15; }
};

}  // namespace rakeline::sound
