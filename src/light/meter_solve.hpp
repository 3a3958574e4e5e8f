// SPDX-License-Identifier: MIT
#pragma once

#include "light/meter_sample.hpp"

#include <optional>
#include <span>

/// The weighted least squares of a meter fit. Private to light/: meter_fit.hpp is the way in.
namespace rakeline::light {

enum class PartState {
    fitted,    ///< free, inside its bounds
    held,      ///< kept at the layout's value, since the readings do not tell it
    at_bound,  ///< the readings ask for more than its bound
};

/// A part of the law that the fit may move.
struct PartBounds {
    double low = 0.0;
    double high = 0.0;
};

/// Bounds of the layout's own fields; the peak is above nothing.
inline constexpr std::array<PartBounds, kLawParts> kLawBounds{
    {{0.0, 1e9}, {0.05, 1.0}, {-0.5, 0.5}, {-0.5, 0.5}}};

/// What is fitted: samples, readings and their standard uncertainties, one each.
struct MeterData {
    std::vector<MeterSample> samples;
    std::vector<double> values;
    std::vector<double> errors;
};

using PartMatrix = std::array<std::array<double, kLawParts>, kLawParts>;

struct LawFit {
    GateLaw law{};
    std::array<PartState, kLawParts> states{};
    double chi_square = 0.0;
    /// Of the fitted parts, (J^T J)^-1 of the weighted derivatives; other rows are 0. Nothing where
    /// the fitted parts can't be told apart; then `blind` names one that should be held.
    std::optional<PartMatrix> covariance;
    int blind = kPeak;
};

/// Parts that the readings can tell at all, by the rank of the moments, taken in the order of
/// LawPart: with few readings the flux comes first, then the fall-off, then the hot spot.
std::array<bool, kLawParts> telling_parts(const MeterData& data);

/// Least chi-square over the free parts within their bounds, the others held at `start`:
///
///     chi-square = sum of ((value - modelled) / error)^2
///
/// Levenberg and Marquardt from `start` and, where all parts are free, from the exact solution of
/// the linear form; where that leaves the bounds, every choice of parts at their bounds is tried
/// and the best kept. Needs as many readings as free parts.
LawFit fit_law(const MeterData& data,
               const GateLaw& start,
               const std::array<bool, kLawParts>& free);

/// How deep the middle is: minus the second of the linear numbers (moments()) over its standard
/// error. Over 3, the light is weaker in the middle than round it. Nothing without all four.
std::optional<double> middle_dip(const MeterData& data);

}  // namespace rakeline::light
