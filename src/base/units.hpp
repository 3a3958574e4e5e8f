// SPDX-License-Identifier: MIT
#pragma once

#include <numbers>

/// Doubles in SI inside; these are the factors used at the edges, and nowhere else.
namespace rakeline::base {

inline constexpr double kPi = std::numbers::pi;
inline constexpr double kRadPerDeg = kPi / 180.0;

/// International foot, exact by definition (1959 yard and pound agreement).
inline constexpr double kMetresPerFoot = 0.3048;
inline constexpr double kMetresPerInch = 0.0254;
inline constexpr double kKilogramsPerPound = 0.45359237;

/// One foot-lambert is 1/pi candela per square foot: 3.4262591 cd/m2.
inline constexpr double kCdm2PerFootLambert = 1.0 / (kPi * kMetresPerFoot * kMetresPerFoot);

/// One foot-candle is one lumen per square foot: 10.7639104 lx.
inline constexpr double kLuxPerFootCandle = 1.0 / (kMetresPerFoot * kMetresPerFoot);

constexpr double radians(double degrees) {
    return degrees * kRadPerDeg;
}
constexpr double degrees(double radians) {
    return radians / kRadPerDeg;
}

}  // namespace rakeline::base
