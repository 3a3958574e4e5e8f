// SPDX-License-Identifier: MIT
#pragma once

#include "light/meter_reading.hpp"
#include "light/meter_solve.hpp"

#include <optional>
#include <vector>

/// From the meter back to the lamp: the flux, fall-off and hot spot that readings on the screen
/// come from.
namespace rakeline::light {

/// Flux out of the lens (lm), FluxChain::corner_fraction, hot_spot_across and hot_spot_up, each
/// with what the layout says. Indices as in LawPart, the flux in the place of the peak.
struct FittedPart {
    double value = 0.0;
    double layout_value = 0.0;
    PartState state = PartState::held;
    std::optional<double> error;  ///< standard error; of fitted parts only
};

struct FittedReading {
    double read = 0.0;
    double fitted = 0.0;
    double error = 1.0;       ///< standard uncertainty of what was read
    double dark_share = 0.0;  ///< of the meter's spot, on masking or outside the picture

    double residual() const { return read - fitted; }
    double residual_errors() const { return residual() / error; }  ///< in standard uncertainties
};

struct MeterFit {
    std::array<FittedPart, kLawParts> parts{};
    PartMatrix correlation{};  ///< of the fitted parts: 1 on the diagonal; 0 for others
    std::vector<FittedReading> readings;
    double chi_square = 0.0;
    int freedom = 0;               ///< readings less fitted parts
    std::optional<double> chance;  ///< of a chi-square as large or larger; nothing without freedom
    std::optional<double> dip;     ///< middle_dip()

    const FittedPart& part(LawPart which) const { return parts[static_cast<std::size_t>(which)]; }
    double flux_ratio() const { return parts[kPeak].value / parts[kPeak].layout_value; }
};

/// Weighted least squares (fit_law) of the model of light::Illuminance and GainModel, with the
/// light of the picture alone: what lamps and walls add to it counts as the projector's.
///
/// A part is held at the layout's value where the readings do not tell it: fewer readings than
/// parts, places that leave it open, or a standard error over kErrorMost. With the corner at 1 the
/// light is even and has no hot spot. Standard errors are the readings' own, carried through the
/// derivatives at the solution; a calibration error that all readings share goes into the flux in
/// proportion and is in no error here. That of the flux follows the peak's and the pattern's:
///
///     Phi = peak * integral of rel over the lit gate,   var Phi = g^T C g,  g = dPhi / dlaw
///
/// Needs one reading or more that falls on the picture, and one value over 0.
MeterFit fit_meter(const MeterScene& scene, const std::vector<MeterReading>& readings);

/// A fall-off or offset less sure than this says nothing: half of the hot spot's whole range.
inline constexpr double kErrorMost = 0.5;

/// The gate's light as fitted.
GateLight fitted_gate(const MeterScene& scene, const MeterFit& fit);

/// Chance that a sum of squares of `freedom` (1 or more) normal deviates is `chi_square` or more:
///
///     Q(n, x) = Q(n - 2, x) + (x/2)^(n/2 - 1) e^(-x/2) / Gamma(n/2),
///     Q(1, x) = erfc(sqrt(x/2)),  Q(2, x) = e^(-x/2)
///
/// Source: recurrence of the upper incomplete gamma function (integration by parts).
double chi_square_chance(double chi_square, int freedom);

}  // namespace rakeline::light
