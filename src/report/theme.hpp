// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "drawing/palette.hpp"

/// Colours of the two grounds that drawings and pages stand on.
namespace rakeline::report {

using drawing::Rgb;

struct Theme {
    Rgb ground{};
    Rgb raised{};    ///< panels, table heads
    Rgb hairline{};  ///< rules between rows
    Rgb text{};
    Rgb quiet{};
    Rgb holds{};
    Rgb near{};
    Rgb missed{};
    Rgb beam{};
    Rgb screen{};
    Rgb sight{};
    Rgb sound{};
};

/// The window's colours.
const Theme& dark_theme();

/// The same hues on paper, darkened until every lettering reaches 4.5 : 1 on the tinted ground and
/// on white.
const Theme& paper_theme();

/// Paper theme on a white sheet: pages that are printed carry no tint over their whole area.
const Theme& page_theme();

Rgb colour(const Theme& theme, drawing::Ink ink);
Rgb verdict_colour(const Theme& theme, study::Verdict verdict);

/// Contrast ratio of two sRGB colours, 1 to 21, (L1 + 0.05)/(L2 + 0.05) of relative luminances.
/// Source: Web Content Accessibility Guidelines 2.1, "contrast ratio" and "relative luminance".
double contrast_ratio(const Rgb& a, const Rgb& b);

}  // namespace rakeline::report
