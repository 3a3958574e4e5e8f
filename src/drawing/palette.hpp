// SPDX-License-Identifier: MIT
#pragma once

#include <array>

/// Cividis, the perceptual palette for per-seat colouring: matplotlib's published table (CC0).
namespace rakeline::drawing {

struct Rgb {
    double r = 0.0, g = 0.0, b = 0.0;  ///< sRGB, 0 to 1
};

/// Colour at `position` 0 (low, dark blue) to 1 (high, yellow), linear between the 256 entries.
Rgb cividis(double position);

}  // namespace rakeline::drawing
