// SPDX-License-Identifier: MIT
#include "sound/perforation.hpp"

#include "base/assert.hpp"
#include "base/special.hpp"
#include "base/units.hpp"
#include "room/perforation.hpp"
#include "sound/measured_loss.hpp"

#include <cmath>

namespace rakeline::sound {

using namespace std::complex_literals;

Sheet sheet_of(const room::Screen& screen) {
    return {.perforation = screen.perforation,
            .thickness_m = screen.sheet_thickness_m,
            .mass_kg_m2 = screen.sheet_mass_kg_m2,
            .loss_table = screen.loss_table,
            .form = {}};
}

std::complex<double> tube_impedance(const Sheet& sheet, double frequency_hz, const Air& air) {
    RL_ASSERT(frequency_hz > 0.0);
    const double omega = 2.0 * base::kPi * frequency_hz;
    const double density = air.density_kg_m3();
    const double viscosity = air.viscosity_pa_s();
    const double diameter = sheet.perforation.hole_diameter_m;
    // Half the diameter over the depth of the layer that clings to the wall; Maa's k.
    const double shear = 0.5 * diameter * std::sqrt(omega * density / viscosity);
    const std::complex<double> mass = 1i * omega * density * sheet.thickness_m;
    if (sheet.form.tube == TubeForm::exact)
        return mass / (1.0 - 2.0 * base::bessel_tube_ratio(shear));
    const double steady = 32.0 * viscosity * sheet.thickness_m / (diameter * diameter);
    return steady * std::sqrt(1.0 + shear * shear / 32.0) +
           mass * (1.0 + 1.0 / std::sqrt(9.0 + 0.5 * shear * shear));
}

std::complex<double> hole_impedance(const Sheet& sheet,
                                    std::complex<double> tube,
                                    double frequency_hz,
                                    const Air& air) {
    const room::Perforation& holes = sheet.perforation;
    const double sigma = room::open_area(holes);
    RL_ASSERT(sigma > 0.0);
    const double omega = 2.0 * base::kPi * frequency_hz;
    const double density = air.density_kg_m3();
    const double factor =
        interaction_factor(sheet.form.interaction, holes.hole_diameter_m, holes.pitch_m, sigma);
    const std::complex<double> end_mass =
        1i * omega * density * 0.85 * holes.hole_diameter_m * factor;
    const double face = 0.5 * std::sqrt(2.0 * omega * density * air.viscosity_pa_s());
    const double end_resistance = sheet.form.faces == FaceResistance::once ? face : 4.0 * face;
    return (tube + end_mass + end_resistance) / sigma;
}

std::complex<double> hole_impedance(const Sheet& sheet, double frequency_hz, const Air& air) {
    return hole_impedance(sheet, tube_impedance(sheet, frequency_hz, air), frequency_hz, air);
}

std::complex<double> beside_limp_mass(const Sheet& sheet,
                                      std::complex<double> holes,
                                      double frequency_hz) {
    const std::complex<double> limp = 2.0i * base::kPi * frequency_hz * sheet.mass_kg_m2;
    return holes * limp / (holes + limp);
}

std::complex<double> sheet_impedance(const Sheet& sheet, double frequency_hz, const Air& air) {
    RL_ASSERT(frequency_hz > 0.0);
    if (sheet.measured()) {
        const double loss_db = MeasuredLoss(sheet.loss_table).normal_db(frequency_hz);
        return mass_that_loses(loss_db) * 2.0 * air.impedance_pa_s_m();
    }
    if (room::open_area(sheet.perforation) == 0.0)
        return 2.0i * base::kPi * frequency_hz * sheet.mass_kg_m2;
    return beside_limp_mass(sheet, hole_impedance(sheet, frequency_hz, air), frequency_hz);
}

std::complex<double> relative_impedance(const Sheet& sheet, double frequency_hz, const Air& air) {
    return sheet_impedance(sheet, frequency_hz, air) / (2.0 * air.impedance_pa_s_m());
}

double transmission_loss_db(std::complex<double> relative_impedance, double cos_angle) {
    return 10.0 * std::log10(std::norm(1.0 + relative_impedance * cos_angle));
}

double screen_loss_db(const Sheet& sheet, double frequency_hz, double angle_rad, const Air& air) {
    return transmission_loss_db(relative_impedance(sheet, frequency_hz, air), std::cos(angle_rad));
}

std::complex<double> reflection_factor(std::complex<double> relative_impedance, double cos_angle) {
    const std::complex<double> x = relative_impedance * cos_angle;
    return x / (1.0 + x);
}

EnergyShares energy_shares(std::complex<double> relative_impedance, double cos_angle) {
    const std::complex<double> x = relative_impedance * cos_angle;
    const double transmitted = 1.0 / std::norm(1.0 + x);
    return {.transmitted = transmitted,
            .reflected = std::norm(reflection_factor(relative_impedance, cos_angle)),
            .absorbed = 2.0 * x.real() * transmitted};
}

double hole_visible_from_m(double diameter_m) {
    return diameter_m / std::tan(base::radians(1.0 / 60.0));
}

}  // namespace rakeline::sound
