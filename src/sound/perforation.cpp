// SPDX-License-Identifier: MIT
#include "sound/perforation.hpp"

#include "base/assert.hpp"
#include "base/special.hpp"
#include "base/units.hpp"
#include "room/perforation.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {

using namespace std::complex_literals;

double fok_factor(double diameter_m, double pitch_m) {
    RL_ASSERT(diameter_m > 0.0 && pitch_m > 0.0);
    const double xi = std::min(diameter_m / pitch_m, 1.0);
    const double xi3 = xi * xi * xi;
    const double tail =
        0.33818 + xi * xi * (0.06793 + xi * (-0.02287 + xi * (0.03015 - 0.01641 * xi)));
    return std::max(0.0, 1.0 - 1.4092 * xi + xi3 * tail);
}

std::complex<double> hole_impedance(const Sheet& sheet, double frequency_hz, const Air& air) {
    RL_ASSERT(frequency_hz > 0.0);
    const double sigma = room::open_area(sheet.perforation);
    RL_ASSERT(sigma > 0.0);
    const double omega = 2.0 * base::kPi * frequency_hz;
    const double density = air.density_kg_m3();
    const double viscosity = air.viscosity_pa_s();
    const double diameter = sheet.perforation.hole_diameter_m;

    const double shear = 0.5 * diameter * std::sqrt(omega * density / viscosity);
    const std::complex<double> tube =
        1i * omega * density * sheet.thickness_m / (1.0 - 2.0 * base::bessel_tube_ratio(shear));
    const double interaction = sheet.interaction == HoleInteraction::fok
                                   ? fok_factor(diameter, sheet.perforation.pitch_m)
                                   : 1.0;
    const std::complex<double> end_mass = 1i * omega * density * 0.85 * diameter * interaction;
    const double end_resistance = 0.5 * std::sqrt(2.0 * omega * density * viscosity);
    return (tube + end_mass + end_resistance) / sigma;
}

std::complex<double> sheet_impedance(const Sheet& sheet, double frequency_hz, const Air& air) {
    RL_ASSERT(frequency_hz > 0.0);
    const std::complex<double> limp = 2.0i * base::kPi * frequency_hz * sheet.mass_kg_m2;
    if (room::open_area(sheet.perforation) == 0.0) return limp;
    const std::complex<double> holes = hole_impedance(sheet, frequency_hz, air);
    return holes * limp / (holes + limp);
}

double transmission_loss_db(std::complex<double> relative_impedance, double cos_angle) {
    return 10.0 * std::log10(std::norm(1.0 + relative_impedance * cos_angle));
}

double screen_loss_db(const Sheet& sheet, double frequency_hz, double angle_rad, const Air& air) {
    const std::complex<double> relative =
        sheet_impedance(sheet, frequency_hz, air) / (2.0 * air.impedance_pa_s_m());
    return transmission_loss_db(relative, std::cos(angle_rad));
}

double hole_visible_from_m(double diameter_m) {
    return diameter_m / std::tan(base::radians(1.0 / 60.0));
}

}  // namespace rakeline::sound
