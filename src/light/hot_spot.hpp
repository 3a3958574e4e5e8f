// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <optional>
#include <vector>

/// Where a picture looks brightest from a seat.
namespace rakeline::light {

struct LitPicture;  // lit_point.hpp

/// The brightest place of the opening as one seat sees it.
struct HotSpot {
    glm::dvec2 place{0.0};  ///< from the opening's centre, right and up, in its width and height
    double ratio = 1.0;     ///< luminance there over that of the centre, 1 or more
    bool operator==(const HotSpot&) const = default;
};

/// Per eye; nothing where it sees the centre dark.
///
/// Searched on a grid of 17 x 9 places over the whole opening, from its brightest place up a grid
/// twice as fine, and from there by the top of a quadratic form through what the places around it
/// send (nine_values.hpp), taken twice. Exact to 1/500 of the width and 1e-5 of the luminance
/// unless the light has several tops less than a sixteenth of the width apart. A place counts as
/// brighter only by more than 1e-9 of the luminance, and the centre is asked first: an even picture
/// has its hot spot at the centre. Of two places alike, the grid's first counts, from the lower
/// left.
std::vector<std::optional<HotSpot>> hot_spots(const LitPicture& picture,
                                              const std::vector<glm::dvec3>& eyes);

}  // namespace rakeline::light
