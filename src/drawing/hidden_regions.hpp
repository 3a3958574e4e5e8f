// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/polygon.hpp"
#include "sight/hidden.hpp"

#include <vector>

/// The hidden part of a picture in connected pieces, for drawings and for the mesh of the 3D view.
namespace rakeline::drawing {

/// A strip: its lower and its upper edge at the same places across, from the left. Surface
/// coordinates, metres.
struct HiddenRegion {
    std::vector<glm::dvec2> low, high;
};

/// What `clear` leaves of the opening. Columns that follow each other are joined from middle to
/// middle, so edges run smoothly; where a piece parts or two meet, new ones begin. The pieces do
/// not overlap, and their areas sum to what the columns hide (but for rounding).
std::vector<HiddenRegion> hidden_regions(const sight::ClearOutline& clear,
                                         const geometry::Rectangle& opening);

/// Round the strip, counter-clockwise.
std::vector<glm::dvec2> outline_of(const HiddenRegion& region);

/// Parallel lines at 45 degrees over the regions, `pitch_m` apart measured along u: what is told by
/// colour alone is lost on many. Each line has points where it passes the middle of a column.
std::vector<std::vector<glm::dvec2>> hatching(const std::vector<HiddenRegion>& regions,
                                              double pitch_m);

}  // namespace rakeline::drawing
