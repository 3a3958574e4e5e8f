// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string>

/// Where published forms of a perforated sheet's impedance part ways, and which one is used.
namespace rakeline::sound {

/// How the air moving at one hole helps its neighbours along: factor on the mass end correction.
enum class HoleInteraction {
    fok,          ///< Fok's function of hole diameter over pitch: used
    fok_by_area,  ///< Fok's function of the square root of the open area
    ingard,       ///< 1 - 1.47 s^(1/2) + 0.47 s^(3/2), s the open area
    none,         ///< holes that do not know of each other: the most that a sheet can lose
};

/// The resistance of the sheet's faces round the holes, Rs = 1/2 sqrt(2 w rho eta).
enum class FaceResistance {
    once,      ///< the sqrt(2)/32 form of Maa's end term: used
    fourfold,  ///< the sqrt(2)/8 form
};

/// The air inside a hole.
enum class TubeForm {
    exact,  ///< Bessel functions: used
    maa,    ///< Maa's approximation of them, mass with 1/sqrt(9 + k^2/2)
};

/// One way to write the impedance. The default is the one that every figure but the band uses.
struct SheetForm {
    HoleInteraction interaction = HoleInteraction::fok;
    FaceResistance faces = FaceResistance::once;
    TubeForm tube = TubeForm::exact;
    bool operator==(const SheetForm&) const = default;
};

/// All combinations of the published conventions above but holes that do not interact, which no
/// perforated sheet's do: the used form first.
std::span<const SheetForm> published_forms();

/// "Fok's factor of d/b, faces counted once, exact tube"
std::string form_words(const SheetForm& form);

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

/// Factor on the mass end correction by the convention, 0 to 1.
double interaction_factor(HoleInteraction interaction,
                          double diameter_m,
                          double pitch_m,
                          double open_area);

}  // namespace rakeline::sound
