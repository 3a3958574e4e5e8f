// SPDX-License-Identifier: MIT
#pragma once

/// The fine contrast that an eye tells from an even field.
namespace rakeline::sound {

/// Contrast sensitivity of a normal eye at one luminance: one over the modulation, (Lmax - Lmin) /
/// (Lmax + Lmin), of bands that it sees half of the time.
///
///     S = 5200 exp(-0.0016 u^2 (1 + 100/L)^0.08)
///         / sqrt((1 + 144/X^2 + 0.64 u^2) (63/L^0.83 + 1/(1 - exp(-0.02 u^2))))
///       u  cycles in a degree, L  luminance in cd/m2, X^2  area that the bands fill, square
///       degrees
///
/// Source: Barten, Formula for the contrast sensitivity of the human eye, 2004, as reported (one
/// circulating program has X where X^2 is meant). Bands without time to look at or without an even
/// ground round them are seen less well. Example: L 48, X 40, u 4 -> 604.0.
class ContrastSense {
public:
    explicit ContrastSense(double luminance_cdm2);  ///< > 0

    /// Nothing coarser than the field is seen as bands: 0 at u = 0.
    double sensitivity(double cycles_per_degree, double field_deg2) const;

private:
    double exponent_, noise_;
};

}  // namespace rakeline::sound
