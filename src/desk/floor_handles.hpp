// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "base/result.hpp"
#include "geometry/vector.hpp"
#include "room/layout.hpp"

#include <optional>
#include <string>
#include <vector>

/// What can be taken hold of in the long section, as data: where each handle stands for a layout,
/// the number that it sets, and the layout with another number. Knows no window.
namespace rakeline::desk {

enum class HandleOf {
    first_row,      ///< where a block begins: back, and the floor there
    row,            ///< a row behind the first: its floor
    spacing,        ///< the block's last row: how far apart its rows stand
    profile_point,  ///< of Hall::floor_profile: back and up
    sill,           ///< lower edge of the frame
    screen_top,     ///< upper edge of the frame
};

struct FloorHandle {
    HandleOf of = HandleOf::row;
    int block = 0;
    int index = 0;       ///< row of the block from the screen, or point of the profile
    glm::dvec2 at{0.0};  ///< (back, up) in the long section, m
    bool moves_back = false;
    bool moves_up = false;

    /// The same thing, wherever it stands now.
    bool same_as(const FloorHandle& o) const {
        return of == o.of && block == o.block && index == o.index;
    }
};

/// The handles of one block, of the profile where the hall's floor is one, and of the screen.
/// `block` is an index in Layout::seating; one that is not there has no handles.
std::vector<FloorHandle> floor_handles(const room::Layout& layout, int block);

enum class HandleAxis { back, up };

/// What goes with a row whose floor is moved.
enum class RowsMoved {
    and_behind,  ///< this row and those behind it; the floor becomes one of flights
    alone,       ///< this row, between its neighbours; the floor becomes one of flights
    whole_block  ///< the block's one number: slope, wanted C, else the riser of every row
};

/// The number that a handle sets along an axis.
struct HandleNumber {
    std::string label;  ///< "Riser of row F"
    base::Unit unit = base::Unit::metre;
    double si = 0.0;
};
HandleNumber handle_number(const room::Layout& layout,
                           const FloorHandle& handle,
                           HandleAxis axis,
                           RowsMoved rows);

/// The number that puts the handle at `to_m` along the axis: the inverse of where it stands.
double number_at(const room::Layout& layout,
                 const FloorHandle& handle,
                 HandleAxis axis,
                 RowsMoved rows,
                 double to_m);

/// The layout with that number. Problems: what check_layout finds in it.
base::Result<room::Layout> with_number(const room::Layout& layout,
                                       const FloorHandle& handle,
                                       HandleAxis axis,
                                       RowsMoved rows,
                                       double si);

/// "row F", "floor point 2", "sill": in the middle of a sentence.
std::string handle_name(const room::Layout& layout, const FloorHandle& handle);

}  // namespace rakeline::desk
