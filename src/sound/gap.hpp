// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "room/layout.hpp"
#include "sound/bands.hpp"
#include "sound/perforation.hpp"

#include <complex>
#include <optional>

/// The gap between a loudspeaker's front and the screen, in which sound goes to and fro.
namespace rakeline::sound {

/// The loudspeaker's acoustic centre counts as its front; the fronts round it as one wall, the
/// baffle, which lies along the sheet at the front's depth.
struct Gap {
    double along_m = 0.0;        ///< front to sheet along the loudspeaker's axis
    double incidence_rad = 0.0;  ///< of the axis at the sheet, from its normal, 0 to pi/2

    /// Depth of the layer of air, square to the sheet: along_m cos(incidence).
    double depth_m() const;
    /// By how much each passing to and fro is longer than none: 2 depth cos(incidence). Source:
    /// derived, plane waves between parallel walls.
    double detour_m() const;
    bool operator==(const Gap&) const = default;
};

/// Nothing where the axis does not meet the sheet, which is taken as going on beyond the frame.
std::optional<Gap> gap_of(const room::Loudspeaker& loudspeaker, const geometry::Patch& surface);

/// |R| = sqrt(1 - alpha) of what stands behind the sheet: the share of the energy that does not
/// come back, linear over the logarithm of frequency between octaves and held beyond them, gives
/// the pressure that does. As from a hard wall, in phase; absorption by random incidence stands for
/// that of the wave here. Source: common practice, no source.
double baffle_reflection(const room::OctaveAbsorption& baffle, double frequency_hz);

/// What one pass to and fro leaves of the pressure, gap left out: the sheet's reflection factor
/// times the baffle's. |loop| < 1.
std::complex<double> loop_factor(std::complex<double> relative_impedance,
                                 double baffle_reflection,
                                 const Gap& gap);

/// Level behind the sheet over that without a baffle, dB, for a pure tone.
///
///     p/p0 = 1 + q + q^2 + ... = 1/(1 - q),   q = loop e^(-j 2 pi f detour / c)
///
/// Source: derived; the same sum as Airy's for a plate of glass (any optics text).
double gap_level_db(std::complex<double> loop, double frequency_hz, const Gap& gap, const Air& air);

/// The same for noise over a band, sheet and baffle as at its middle, all of its hertz alike:
///
///     mean |p/p0|^2 = [F(b) - F(a)] / [(1 - r^2)(b - a)],  F(x) = x + 2 atan(r sin x/(1 - r cos
///     x))
///       r = |loop|, a and b  phase of 1/q at the band's ends
///
/// Source: derived: the integral of Poisson's kernel.
double gap_band_level_db(
    std::complex<double> loop, double low_hz, double high_hz, const Gap& gap, const Air& air);

/// Peak over neighbouring dip, dB: 20 lg((1 + |loop|)/(1 - |loop|)).
double gap_ripple_db(std::complex<double> loop);

/// From one peak to the next, Hz: c / detour.
double ripple_spacing_hz(const Gap& gap, const Air& air);

/// What the gap's dips hang on: where the first lies follows from sheet and depth, how deep they
/// are from sheet and baffle.
struct GapSetting {
    const Sheet& sheet;
    const Air& air;
};

/// The lowest frequency at which one pass to and fro comes back in opposite phase: between 1/2 and
/// 3/4 of the spacing, since the sheet turns the phase by 0 (a heavy sheet) to a quarter turn (a
/// light one). Source: derived.
double first_dip_hz(const GapSetting& setting, const Gap& gap);

/// The distance along the axis, at the gap's incidence, whose first dip lies at this frequency;
/// nearer ones put it above, farther ones below.
double distance_of_dip_m(const GapSetting& setting, double frequency_hz, double incidence_rad);

}  // namespace rakeline::sound
