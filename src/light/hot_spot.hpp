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
/// Searched on a grid of 17 x 9 places over the whole opening, then from its brightest place in
/// halving steps down to 1/1000 of the width. Exact to that unless the light has several tops less
/// than a sixteenth of the width apart. A place counts as brighter only by more than 1e-9 of the
/// luminance, and the centre is asked first: an even picture has its hot spot at the centre. Of two
/// places alike, the grid's first counts, from the lower left.
std::vector<std::optional<HotSpot>> hot_spots(const LitPicture& picture,
                                              const std::vector<glm::dvec3>& eyes);

}  // namespace rakeline::light
