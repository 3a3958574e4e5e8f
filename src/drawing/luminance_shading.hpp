// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "study/luminance_map.hpp"

#include <functional>

/// The luminance that a seat sees over the picture, in the palette, with contours and a scale in
/// both units: the same in every output.
namespace rakeline::drawing {

/// Where a luminance stands in the palette, 0 to 1 from the scale's least to its greatest.
double palette_place(const study::LuminanceScale& scale, double cdm2);

/// The ink for lines and letters over a place in the palette.
Ink ink_over(double palette_place);

/// A round number of the unit in use, on the scale: each is a contour, and a tick of the scale.
struct LuminanceLevel {
    double cdm2 = 0.0;
    std::string text;  ///< in the shown unit, without it
};

/// Evenly apart, twelve at most, the scale's ends among them where they are round.
std::vector<LuminanceLevel> luminance_levels(const study::LuminanceScale& scale,
                                             base::UnitSystem units);

/// How places of the opening (halves of its width and height from its centre) come to a page.
struct OpeningPage {
    /// Nothing where it lies off the page.
    std::function<std::optional<glm::dvec2>(glm::dvec2 halves)> point;
    /// The pieces of a line that lie on the page.
    std::function<std::vector<std::vector<glm::dvec2>>(const std::vector<glm::dvec2>& halves)> line;
    double pitch_m = 0.0;  ///< of lettering, in the drawing's metres
};

/// The shading and its contours, each with its number where it is long enough.
void add_luminance(const study::SeatLuminance& luminance,
                   const OpeningPage& page,
                   base::UnitSystem units,
                   Drawing& drawing);

/// A bar of the palette with cd/m2 above and foot-lamberts below, lines across it at the contours,
/// and a bracket at the window of the limits on the reference reading.
void add_luminance_scale(const study::LuminanceScale& scale,
                         const geometry::Rectangle& box,
                         base::UnitSystem units,
                         Drawing& drawing);

/// The box is this many lines of lettering high.
inline constexpr double kScaleLines = 4.2;

/// The scale alone: one metre of the drawing is one line of lettering.
Drawing luminance_scale_drawing(const study::LuminanceScale& scale,
                                double width_lines,
                                base::UnitSystem units);

/// What the choice asks for: its pair's map toward its seat or the reference seat. Nothing where it
/// asks for none, or there is no seat or no picture.
std::optional<study::SeatLuminance> chosen_luminance(const study::Study& study,
                                                     const DrawingChoice& choice);

}  // namespace rakeline::drawing
