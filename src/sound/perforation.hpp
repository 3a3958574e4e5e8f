// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"
#include "sound/air.hpp"
#include "sound/sheet_form.hpp"

#include <complex>
#include <vector>

/// Sound through a perforated, limp sheet. Time goes as e^(+j w t): a mass is +j w m.
namespace rakeline::sound {

struct Sheet {
    room::Perforation perforation;
    double thickness_m = 0.0003;
    double mass_kg_m2 = 0.35;  ///< as hung, holes included
    /// Two or more stand in place of the loss from holes and mass (measured_loss.hpp).
    std::vector<room::LossPoint> loss_table;
    SheetForm form;

    bool measured() const { return !loss_table.empty(); }
    bool operator==(const Sheet&) const = default;
};

/// The sheet that the screen is of.
Sheet sheet_of(const room::Screen& screen);

/// Impedance of air in the holes, over the whole sheet's area, as if the sheet could not move.
///
///     z = (1/sigma) { j w rho t [1 - 2 J1(s)/(s J0(s))]^-1 + j w rho 0.85 d g + Rs }   [Pa s/m]
///     s = (d/2) sqrt(w rho/eta) sqrt(-j),   Rs = 1/2 sqrt(2 w rho eta)
///       sigma open area, w = 2 pi f, t thickness, d diameter, g hole interaction (sheet_form.hpp)
///
/// First term: viscous flow in a round tube, exact. 0.85 d = 8d/(3 pi) is the end correction of
/// both ends together (each end of a hole in a wide baffle: 4d/(3 pi)). Rs is the surface
/// resistance, counted once for both faces: the sqrt(2)/32 form of Maa's resistance. Other texts
/// count it four times (sqrt(2)/8). The walls hold the temperature of the air: no thermal losses.
/// Maa's approximation of the first term, where the form asks for it, k = d sqrt(w rho/(4 eta)):
///
///     32 eta t/d^2 sqrt(1 + k^2/32) + j w rho t [1 + 1/sqrt(9 + k^2/2)]
///
/// Source: Zwikker and Kosten (tube), Maa (approximation and end terms, as reported); numbers of
/// both from memory. Some copies print 1/sqrt(1 + k^2/2) in the mass: only the 9 has the right
/// limit, 4/3, for narrow holes. The perforation must have holes. Of a woven sheet d is the side of
/// its square openings, which is their hydraulic diameter: near, not exact, in the tube's friction
/// and in Fok's function.
std::complex<double> hole_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// The first term in the braces above, for a caller who adds ends of several forms to it: it takes
/// most of the time.
std::complex<double> tube_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// The same impedance of the holes from that term.
std::complex<double> hole_impedance(const Sheet& sheet,
                                    std::complex<double> tube,
                                    double frequency_hz,
                                    const Air& air);

/// Holes in parallel with the sheet's limp mass, Pa s/m.
std::complex<double> beside_limp_mass(const Sheet& sheet,
                                      std::complex<double> holes,
                                      double frequency_hz);

/// Specific impedance of the sheet: holes in parallel with the limp mass j w m, Pa s/m; without
/// holes the limp mass alone. `frequency_hz` > 0. Source: common practice, no source: both are
/// driven by the same pressure difference and their volume flows add. Of a measured sheet, the mass
/// that loses as much (measured_loss.hpp).
std::complex<double> sheet_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// The same over 2 rho c, which is what loss and reflection hang on.
std::complex<double> relative_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// Transmission loss in dB at incidence `angle_rad` (0 to pi/2) from the sheet's normal: >= 0.
///
///     loss = 10 lg |1 + z cos(angle) / (2 rho c)|^2
///
/// The sheet is thin against the wavelength and reacts locally. Example: limp 0.35 kg/m2 without
/// holes, 1 kHz, normal -> 9.1 dB.
double screen_loss_db(const Sheet& sheet, double frequency_hz, double angle_rad, const Air& air);

/// The same for a caller who keeps z / (2 rho c) over many angles.
double transmission_loss_db(std::complex<double> relative_impedance, double cos_angle);

/// Pressure that comes back over pressure that falls on the sheet.
///
///     R = x / (1 + x),   x = z cos(angle) / (2 rho c)
///
/// Source: derived: equal velocities on both faces, the pressure difference across z.
std::complex<double> reflection_factor(std::complex<double> relative_impedance, double cos_angle);

/// What becomes of a plane wave's energy at the sheet, as shares of what falls on it; in sum 1.
struct EnergyShares {
    double transmitted = 1.0;
    double reflected = 0.0;
    double absorbed = 0.0;
};

/// Transmitted |1/(1 + x)|^2, reflected |x/(1 + x)|^2, absorbed by friction 2 Re x |1/(1 + x)|^2:
/// the velocity through the sheet, squared, times its resistance. Source: derived.
EnergyShares energy_shares(std::complex<double> relative_impedance, double cos_angle);

/// Distance within which a hole of this diameter is larger than one minute of arc: d / tan(1').
/// One minute is the usual figure for what a normal eye resolves (common practice, no source).
/// Example: 1.2 mm -> 4.13 m.
double hole_visible_from_m(double diameter_m);

}  // namespace rakeline::sound
