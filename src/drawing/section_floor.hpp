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

/// Where the platforms cut the hall's centre line; treads of rows that it does not cut, beside the
/// middle of their row. Sorted from the screen, then from below.
std::vector<FloorPiece> floor_pieces(const room::SeatPlan& plan);

/// Floors, the risers that join them, and solid balcony fronts.
void add_section_floor(const study::Study& study, Drawing& drawing);

}  // namespace rakeline::drawing
