// SPDX-License-Identifier: MIT
#pragma once

/// How a row's riser is climbed in the aisle beside it.
namespace rakeline::sight {

/// Greatest riser of one step in an aisle, m: 8 in (203 mm). Source: International Building Code
/// 2021, 1030.14.2.2 stepped aisles, 4 in to 8 in, from memory; local codes set it and go first.
inline constexpr double kAisleStepMost_m = 0.2032;

/// Least riser of a step that is seen as one, m: 4 in (102 mm). Same source, from memory.
inline constexpr double kAisleStepLeast_m = 0.1016;

/// Slope over which a floor takes steps and is no ramp: 2 in a foot, 9.46 degrees. Source: US
/// practice of 1945 (Theatre Catalog 1945); today's codes ask for steps sooner.
inline constexpr double kSteepestRamp = 2.0 / 12.0;

struct AisleSteps {
    int count = 0;         ///< equal steps from row to row; 0 where the rows stand level
    double riser_m = 0.0;  ///< of each
    double going_m = 0.0;  ///< depth of each, were they spread evenly over the spacing
    bool operator==(const AisleSteps&) const = default;
};

/// The fewest equal steps of `step_most_m` or less over a riser; up or down alike.
AisleSteps aisle_steps(double riser_m, double spacing_m, double step_most_m);

}  // namespace rakeline::sight
