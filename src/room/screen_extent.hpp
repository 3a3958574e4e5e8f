// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "room/layout.hpp"

#include <optional>

namespace rakeline::room {

/// The sheet with the frame's centre as its own.
geometry::Patch frame_patch(const Screen& screen);

/// Room that the frame takes, m: up and back of its lowest, highest, hindmost and foremost points,
/// and where its side edges stand.
struct ScreenExtent {
    double low_m = 0.0;
    double high_m = 0.0;
    double hindmost_m = 0.0;  ///< back, least
    double foremost_m = 0.0;  ///< back, most: nearest to the seats
    double sides_m = 0.0;     ///< back of the side edges, least
};

/// Nothing where the radius is too small for the frame.
std::optional<ScreenExtent> screen_extent(const Screen& screen);

}  // namespace rakeline::room
