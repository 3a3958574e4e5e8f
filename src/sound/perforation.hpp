// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"

#include <complex>

/// Sound through a perforated, limp sheet.
namespace rakeline::sound {

/// Air at the hall's temperature and one standard atmosphere.
struct Air {
    double temperature_c = 20.0;
    double humidity_fraction = 0.5;
    double pressure_pa = 101325.0;

    double density_kg_m3() const;    ///< dry ideal gas
    double sound_speed_m_s() const;  ///< 343.2 m/s at 20 degC (ISO 9613-1: 343.2 sqrt(T/293.15))
    double viscosity_pa_s() const;   ///< Sutherland's law
};

struct Sheet {
    room::Perforation perforation;
    double thickness_m = 0.0003;
    double mass_kg_m2 = 0.35;
};

/// Open area over whole area: pi d^2/(4 b^2) for square, pi d^2/(2 sqrt(3) b^2) for staggered
/// holes.
double open_area(const room::Perforation& perforation);

/// Fok's hole interaction: factor (0..1) on the mass end correction; xi = d/b.
double fok_factor(double diameter_m, double pitch_m);

/// Specific impedance of the sheet: holes (viscous tubes with end corrections) in parallel with the
/// limp mass, Pa s/m. `frequency_hz` > 0.
std::complex<double> sheet_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// Transmission loss in dB at incidence `angle_rad` from the sheet's normal: >= 0.
///     loss = -10 lg |1 + z cos(angle) / (2 rho c)|^-2
double screen_loss_db(const Sheet& sheet, double frequency_hz, double angle_rad, const Air& air);

}  // namespace rakeline::sound
