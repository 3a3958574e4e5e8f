// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

namespace rakeline::drawing {

/// One piece of floor along the section, from nearer the screen to farther.
struct FloorPiece {
    glm::dvec2 from{0.0};  ///< (back, up)
    glm::dvec2 to{0.0};
    bool on_centre_line = true;
    room::PlatformKind kind = room::PlatformKind::tread;
    std::optional<int> row;
};

/// Where the platforms cut the hall's centre line; those that it does not cut, along the middle of
/// their own width. Sorted from the screen, then from below.
std::vector<FloorPiece> floor_pieces(const std::vector<room::Platform>& platforms);

/// Floors, the risers that join them, and solid balcony fronts.
void add_section_floor(const study::Study& study, Drawing& drawing);

}  // namespace rakeline::drawing
