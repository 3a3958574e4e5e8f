// SPDX-License-Identifier: MIT
#pragma once

#include "room/layout.hpp"
#include "sound/air.hpp"

#include <complex>

/// Sound through a perforated, limp sheet. Time goes as e^(+j w t): a mass is +j w m.
namespace rakeline::sound {

/// Whether the air moving at one hole helps its neighbours along. Real sheets: fok. Without it the
/// loss is an upper bound (used to bracket published measurements).
enum class HoleInteraction { fok, none };

struct Sheet {
    room::Perforation perforation;
    double thickness_m = 0.0003;
    double mass_kg_m2 = 0.35;  ///< as hung, holes included
    HoleInteraction interaction = HoleInteraction::fok;
    bool operator==(const Sheet&) const = default;
};

/// Fok's hole interaction: factor on the mass end correction, xi = d/b.
///
///     g = 1 - 1.4092 xi + 0.33818 xi^3 + 0.06793 xi^5 - 0.02287 xi^6 + 0.03015 xi^7 - 0.01641 xi^8
///       d  hole diameter, b  pitch between neighbouring holes, m; 0 < d <= b
///
/// Falls from 1 (far apart) to 0 (just short of touching); the series' small negative end is cut.
/// Another convention takes xi = d over the diameter of a tube of one hole's share of the area
/// (xi = square root of open area): it gives 0.704 where this one gives 0.667.
/// Source: V. A. Fok, 1941, coefficients from memory. Example: d 1.2 mm, b 5.013 mm -> 0.667.
double fok_factor(double diameter_m, double pitch_m);

/// Impedance of air in the holes, over the whole sheet's area, as if the sheet could not move.
///
///     z = (1/sigma) { j w rho t [1 - 2 J1(s)/(s J0(s))]^-1 + j w rho 0.85 d g + Rs }   [Pa s/m]
///     s = (d/2) sqrt(w rho/eta) sqrt(-j),   Rs = 1/2 sqrt(2 w rho eta)
///       sigma open area, w = 2 pi f, t thickness, d diameter, g hole interaction (fok_factor)
///
/// First term: viscous flow in a round tube, exact. 0.85 d = 8d/(3 pi) is the end correction of
/// both ends together (each end of a hole in a wide baffle: 4d/(3 pi)). Rs is the surface
/// resistance, counted once for both faces: the sqrt(2)/32 form of Maa's resistance. Other texts
/// count it four times (sqrt(2)/8). The walls hold the temperature of the air: no thermal losses.
/// Source: Zwikker and Kosten (tube), Maa (end terms, as reported); numbers of both from memory.
/// The perforation must have holes. Of a woven sheet d is the side of its square openings, which is
/// their hydraulic diameter: near, not exact, in the tube's friction and in Fok's function.
std::complex<double> hole_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// Specific impedance of the sheet: holes in parallel with the limp mass j w m, Pa s/m; without
/// holes the limp mass alone. `frequency_hz` > 0. Source: common practice, no source: both are
/// driven by the same pressure difference and their volume flows add.
std::complex<double> sheet_impedance(const Sheet& sheet, double frequency_hz, const Air& air);

/// Transmission loss in dB at incidence `angle_rad` (0 to pi/2) from the sheet's normal: >= 0.
///
///     loss = 10 lg |1 + z cos(angle) / (2 rho c)|^2
///
/// The sheet is thin against the wavelength and reacts locally. Example: limp 0.35 kg/m2 without
/// holes, 1 kHz, normal -> 9.1 dB.
double screen_loss_db(const Sheet& sheet, double frequency_hz, double angle_rad, const Air& air);

/// The same for a caller who keeps z / (2 rho c) over many angles.
double transmission_loss_db(std::complex<double> relative_impedance, double cos_angle);

/// Distance within which a hole of this diameter is larger than one minute of arc: d / tan(1').
/// One minute is the usual figure for what a normal eye resolves (common practice, no source).
/// Example: 1.2 mm -> 4.13 m.
double hole_visible_from_m(double diameter_m);

}  // namespace rakeline::sound
