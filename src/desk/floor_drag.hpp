// SPDX-License-Identifier: MIT
#pragma once

#include "desk/floor_handles.hpp"

/// A handle under the hand: from where the pointer is to a layout that holds.
namespace rakeline::desk {

/// What the hand asks for beside a place.
struct DragWish {
    RowsMoved rows = RowsMoved::and_behind;
    bool back = true;  ///< along this axis; a handle that doesn't move so stays
    bool up = true;
    bool snap = true;  ///< to whole steps of the number, see snap_step
    base::UnitSystem units = base::UnitSystem::metric;
};

/// Steps in which a dragged number goes: 10 mm or half an inch; a tenth of a degree.
double snap_step(base::Unit unit, base::UnitSystem units);

struct Dragged {
    room::Layout layout;  ///< that holds
    /// Why the handle stays behind the pointer: what stood in the way of the next step.
    std::optional<base::Problem> stopped;
};

/// The layout with the handle at `to` (back, up), or as far on the way there as check_layout lets
/// it. `start` is the layout when the handle was taken hold of: where that can't be studied itself,
/// it comes back as it is.
Dragged dragged(const room::Layout& start,
                const FloorHandle& handle,
                glm::dvec2 to,
                const DragWish& wish);

}  // namespace rakeline::desk
