// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "geometry/polygon.hpp"
#include "room/layout.hpp"

/// The picture surface in the room, and the opening that the masking leaves for each format.
namespace rakeline::picture {

/// The sheet: its centre is the frame's centre, tilted about the frame's horizontal centre line.
geometry::Patch screen_patch(const room::Screen& screen);

/// A format's opening. `uv` in surface coordinates of screen_patch.
struct Opening {
    geometry::Rectangle uv;
    double width_m = 0.0;   ///< chord
    double height_m = 0.0;  ///< along the surface
    double area_m2 = 0.0;   ///< of the surface: arc times height
    bool operator==(const Opening&) const = default;
};

/// The masked opening, never larger than the frame. Common height: full height, width by the aspect
/// ratio. Common width: full width, height by the ratio, from the edge that stands. Four-way: the
/// largest of the ratio, or of the width wanted, centred. Fixed: the picture is the largest of the
/// ratio within the frame, centred. Where the ratio does not fit in the moving direction, the other
/// one gives way too (the largest of the ratio that fits).
Opening masked_opening(const room::Screen& screen, const room::Format& format);

/// Room points of the opening's corners and edges, used by sight and drawing.
glm::dvec3 opening_point(const geometry::Patch& patch,
                         const Opening& opening,
                         double across,
                         double up);  ///< across, up in -1 ... +1 from the opening's centre

}  // namespace rakeline::picture
