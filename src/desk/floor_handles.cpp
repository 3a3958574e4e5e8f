// SPDX-License-Identifier: MIT
#include "desk/floor_handles.hpp"

#include "base/assert.hpp"
#include "room/layout_file.hpp"
#include "room/rows.hpp"
#include "study/rake_plan.hpp"

#include <cmath>

namespace rakeline::desk {
namespace {

using room::BlockFloor;

room::SeatPlanInput plan_input(const room::Layout& layout) {
    return {layout.hall, layout.screen, layout.seating, layout.audience};
}

const room::SeatBlock& block_of(const room::Layout& layout, const FloorHandle& handle) {
    return layout.seating.at(static_cast<std::size_t>(handle.block));
}

std::vector<room::RowLine> rows_of(const room::Layout& layout, const room::SeatBlock& block) {
    return room::row_lines(plan_input(layout), block);
}

std::string letter_of(const room::Layout& layout, const FloorHandle& handle) {
    return room::row_letter(room::row_index(block_of(layout, handle).first_row).value_or(0) +
                            handle.index);
}

/// Edges of the frame on the centre line; a tilted one turns about its middle.
glm::dvec2 frame_edge(const room::Screen& screen, double side) {
    const double half = 0.5 * screen.height_m;
    return {screen.setback_m - side * half * std::sin(screen.tilt_rad),
            screen.sill_m + half + side * half * std::cos(screen.tilt_rad)};
}

void add_screen(const room::Layout& layout, int block, std::vector<FloorHandle>& out) {
    out.push_back({HandleOf::sill, block, 0, frame_edge(layout.screen, -1.0), false, true});
    out.push_back({HandleOf::screen_top, block, 0, frame_edge(layout.screen, 1.0), false, true});
}

void add_profile(const room::Layout& layout, int block, std::vector<FloorHandle>& out) {
    if (layout.hall.floor != room::FloorMode::by_profile) return;
    int point = 0;
    for (const room::FloorPoint& p : layout.hall.floor_profile)
        out.push_back({HandleOf::profile_point, block, point++, {p.back_m, p.up_m}, true, true});
}

void add_rows(const room::Layout& layout, int block, std::vector<FloorHandle>& out) {
    const auto& seats = layout.seating[static_cast<std::size_t>(block)];
    const auto rows = rows_of(layout, seats);
    const bool own_floor = !room::stands_on_profile(plan_input(layout), seats);
    // The spacing's handle stands over the last row's, at the height of a seat's back.
    constexpr double kOverFloor_m = 0.6;
    for (std::size_t n = 0; n < rows.size(); ++n) {
        const glm::dvec2 at{rows[n].back_m, rows[n].up_m};
        const int row = static_cast<int>(n);
        if (n == 0)
            out.push_back({HandleOf::first_row, block, row, at, true, own_floor});
        else if (own_floor)
            out.push_back({HandleOf::row, block, row, at, false, true});
    }
    if (rows.size() < 2) return;
    out.push_back({HandleOf::spacing,
                   block,
                   static_cast<int>(rows.size()) - 1,
                   {rows.back().back_m, rows.back().up_m + kOverFloor_m},
                   true,
                   false});
}

/// What the rows of the block stand apart beside their spacing, from the first to the last.
double cross_aisles(const room::SeatBlock& block, int last_row) {
    double width = 0.0;
    for (int row = 0; row < last_row; ++row)
        width += room::cross_aisle_behind(block, row);
    return width;
}

/// Wanted C at which row `row` of an equal-clearance block stands at `up_m`: its height is linear
/// in C (room/rows.cpp has the recursion), so that two heights tell. A row that C does not lift
/// keeps what it has.
double wanted_c_at(const room::Layout& layout,
                   const room::SeatBlock& block,
                   std::size_t row,
                   double up_m) {
    room::SeatBlock tried = block;
    tried.wanted_c_m = 0.0;
    const double at_none = rows_of(layout, tried).at(row).up_m;
    tried.wanted_c_m = 1.0;
    const double lift = rows_of(layout, tried).at(row).up_m - at_none;
    return lift > 0.0 ? (up_m - at_none) / lift : block.wanted_c_m;
}

HandleNumber block_number(const room::SeatBlock& block) {
    switch (block.floor) {
        case BlockFloor::slope:
            return {"Slope", base::Unit::radian, block.slope_rad};
        case BlockFloor::equal_clearance:
            return {"Wanted C", base::Unit::millimetre, block.wanted_c_m};
        case BlockFloor::stepped:
            return {"Riser of every row", base::Unit::millimetre, block.riser_m};
        case BlockFloor::level:
        case BlockFloor::flights:
            break;
    }
    return {"Riser of every row", base::Unit::millimetre, 0.0};
}

double block_number_at(const room::Layout& layout, const FloorHandle& handle, double to_m) {
    const room::SeatBlock& block = block_of(layout, handle);
    const auto row = static_cast<std::size_t>(handle.index);
    const auto rows = rows_of(layout, block);
    const double rise = to_m - rows.front().up_m;
    if (block.floor == BlockFloor::slope)
        return std::atan2(rise, rows.at(row).back_m - rows.front().back_m);
    if (block.floor == BlockFloor::equal_clearance) return wanted_c_at(layout, block, row, to_m);
    return rise / static_cast<double>(handle.index);
}

void set_block_number(room::SeatBlock& block, double si) {
    if (block.floor == BlockFloor::slope) {
        block.slope_rad = si;
    } else if (block.floor == BlockFloor::equal_clearance) {
        block.wanted_c_m = si;
    } else {
        block.floor = BlockFloor::stepped;
        block.flights.clear();
        block.riser_m = si;
    }
}

/// The member of the layout that the handle writes as it is; null where it takes more than that.
double* member_of(room::Layout& layout, const FloorHandle& handle, HandleAxis axis) {
    const bool back = axis == HandleAxis::back;
    room::SeatBlock& block = layout.seating.at(static_cast<std::size_t>(handle.block));
    const auto index = static_cast<std::size_t>(handle.index);
    switch (handle.of) {
        case HandleOf::first_row:
            return back ? &block.first_row_back_m : &block.first_row_up_m;
        case HandleOf::spacing:
            return &block.row_spacing_m;
        case HandleOf::profile_point:
            return back ? &layout.hall.floor_profile.at(index).back_m
                        : &layout.hall.floor_profile.at(index).up_m;
        case HandleOf::sill:
            return &layout.screen.sill_m;
        case HandleOf::screen_top:
            return &layout.screen.height_m;
        case HandleOf::row:
            break;
    }
    return nullptr;
}

std::string label_of(const room::Layout& layout, const FloorHandle& handle, HandleAxis axis) {
    const bool back = axis == HandleAxis::back;
    switch (handle.of) {
        case HandleOf::first_row:
            return "Row " + letter_of(layout, handle) +
                   (back ? ", back from the screen wall" : ", floor");
        case HandleOf::spacing:
            return "Row spacing";
        case HandleOf::profile_point:
            return "Floor point " + std::to_string(handle.index + 1) + (back ? ", back" : ", up");
        case HandleOf::sill:
            return "Sill";
        case HandleOf::screen_top:
            return "Frame height";
        case HandleOf::row:
            break;
    }
    return "Riser of row " + letter_of(layout, handle);
}

base::Result<room::Layout> checked(room::Layout layout) {
    auto problems = room::check_layout(layout);
    if (!problems.empty()) return problems;
    return layout;
}

/// Floors of the block with row `handle.index` lifted by `by_m`, and who goes with it.
base::Result<room::Layout> with_row_lifted(const room::Layout& layout,
                                           const FloorHandle& handle,
                                           RowsMoved moved,
                                           double by_m) {
    const auto rows = rows_of(layout, block_of(layout, handle));
    std::vector<double> floor_m;
    for (const room::RowLine& row : rows)
        floor_m.push_back(row.up_m);
    const auto first = static_cast<std::size_t>(handle.index);
    const std::size_t end = moved == RowsMoved::alone ? first + 1 : floor_m.size();
    for (std::size_t n = first; n < end; ++n)
        floor_m.at(n) += by_m;
    return study::raked_layout(layout, handle.block, floor_m);
}

double riser_of(const room::Layout& layout, const FloorHandle& handle) {
    const auto rows = rows_of(layout, block_of(layout, handle));
    const auto n = static_cast<std::size_t>(handle.index);
    return rows.at(n).up_m - rows.at(n - 1).up_m;
}

/// The first row by itself: the others keep their floors.
bool lifts_first_alone(const FloorHandle& handle, HandleAxis axis, RowsMoved rows) {
    return handle.of == HandleOf::first_row && axis == HandleAxis::up && rows == RowsMoved::alone;
}

}  // namespace

std::vector<FloorHandle> floor_handles(const room::Layout& layout, int block) {
    std::vector<FloorHandle> out;
    if (block < 0 || static_cast<std::size_t>(block) >= layout.seating.size()) return out;
    add_screen(layout, block, out);
    add_profile(layout, block, out);
    add_rows(layout, block, out);
    return out;
}

HandleNumber handle_number(const room::Layout& layout,
                           const FloorHandle& handle,
                           HandleAxis axis,
                           RowsMoved rows) {
    if (handle.of == HandleOf::row && rows == RowsMoved::whole_block)
        return block_number(block_of(layout, handle));
    if (handle.of == HandleOf::row)
        return {label_of(layout, handle, axis), base::Unit::millimetre, riser_of(layout, handle)};
    room::Layout read = layout;
    return {label_of(layout, handle, axis), base::Unit::metre, *member_of(read, handle, axis)};
}

double number_at(const room::Layout& layout,
                 const FloorHandle& handle,
                 HandleAxis axis,
                 RowsMoved rows,
                 double to_m) {
    const room::SeatBlock& block = block_of(layout, handle);
    const double tilted = std::cos(layout.screen.tilt_rad);
    switch (handle.of) {
        case HandleOf::spacing:
            return (to_m - block.first_row_back_m - cross_aisles(block, handle.index)) /
                   handle.index;
        case HandleOf::sill:
            return to_m - 0.5 * layout.screen.height_m * (1.0 - tilted);
        case HandleOf::screen_top:
            return 2.0 * (to_m - layout.screen.sill_m) / (1.0 + tilted);
        case HandleOf::row:
            if (rows == RowsMoved::whole_block) return block_number_at(layout, handle, to_m);
            return riser_of(layout, handle) + to_m -
                   rows_of(layout, block).at(static_cast<std::size_t>(handle.index)).up_m;
        case HandleOf::first_row:
        case HandleOf::profile_point:
            break;
    }
    RL_ASSERT(axis == HandleAxis::back ? handle.moves_back : handle.moves_up);
    return to_m;
}

base::Result<room::Layout> with_number(const room::Layout& layout,
                                       const FloorHandle& handle,
                                       HandleAxis axis,
                                       RowsMoved rows,
                                       double si) {
    if (lifts_first_alone(handle, axis, rows))
        return with_row_lifted(layout, handle, rows, si - block_of(layout, handle).first_row_up_m);
    if (handle.of == HandleOf::row && rows != RowsMoved::whole_block)
        return with_row_lifted(layout, handle, rows, si - riser_of(layout, handle));
    room::Layout out = layout;
    if (handle.of == HandleOf::row)
        set_block_number(out.seating.at(static_cast<std::size_t>(handle.block)), si);
    else
        *member_of(out, handle, axis) = si;
    return checked(std::move(out));
}

std::string handle_name(const room::Layout& layout, const FloorHandle& handle) {
    switch (handle.of) {
        case HandleOf::first_row:
        case HandleOf::row:
            return "row " + letter_of(layout, handle);
        case HandleOf::spacing:
            return "row spacing";
        case HandleOf::profile_point:
            return "floor point " + std::to_string(handle.index + 1);
        case HandleOf::sill:
            return "sill";
        case HandleOf::screen_top:
            break;
    }
    return "frame height";
}

}  // namespace rakeline::desk
