// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_study.hpp"

#include <vector>

/// Where picture and opening don't cover each other, as polygons in surface coordinates.
namespace rakeline::drawing {

using Polygons = std::vector<std::vector<glm::dvec2>>;

/// The parts of the uncorrected picture outside the opening: left and right of it over the
/// picture's whole height, then under and over it. Together their area is the figure
/// picture.overfill times the opening's area.
Polygons light_on_masking(const picture::ProjectedPicture& picture,
                          const picture::Opening& opening);

/// The parts of the opening that the picture leaves dark, likewise by its four edges. The picture
/// is a rectangle in the gate, so the opening is taken there, cut, and brought back; its border
/// where the lens can't see it is left out.
Polygons dark_in_opening(const picture::ProjectedPicture& picture, const picture::Opening& opening);

}  // namespace rakeline::drawing
