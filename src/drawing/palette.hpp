// SPDX-License-Identifier: MIT
#pragma once

#include <array>

/// Cividis, the perceptual palette for per-seat colouring and for luminance: matplotlib's published
/// table (CC0).
namespace rakeline::drawing {

struct Rgb {
    double r = 0.0, g = 0.0, b = 0.0;  ///< sRGB, 0 to 1
};

/// Colour at `position` 0 (low, dark blue) to 1 (high, yellow), linear between the 256 entries.
Rgb cividis(double position);

/// Lines and letters over the palette, by whether they stand on its dark half or its bright one:
/// from kOverBright_from on the dark letters read better. Both reach 3 : 1 on their own half and
/// more than that away from the middle.
inline constexpr Rgb kOverDark{0.957, 0.945, 0.910};
inline constexpr Rgb kOverBright{0.055, 0.063, 0.075};
inline constexpr double kOverBright_from = 0.45;

}  // namespace rakeline::drawing
