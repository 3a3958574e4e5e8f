// SPDX-License-Identifier: MIT
#pragma once

#include "desk/workspace.hpp"
#include "view/scene.hpp"

#include <imgui.h>

#include <vector>

/// Seats coloured by one figure, cividis from its least to its greatest value.
namespace rakeline::desk {

struct SeatColours {
    const study::Figure* figure = nullptr;  ///< null: plain seats
    double least = 0.0;
    double greatest = 0.0;
    bool alike = false;     ///< both ends read the same: one colour, and said so
    bool reversed = false;  ///< low values bright: the limit is an upper bound, so low is good
    std::vector<view::SeatPaint> seats;
};

SeatColours seat_colours(const study::Study& study, const Workspace& workspace);

/// The palette at `share` of the way from least to greatest, reversed or not.
ImVec4 legend_colour(const SeatColours& colours, double share);

}  // namespace rakeline::desk
