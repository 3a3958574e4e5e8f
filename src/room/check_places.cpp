// SPDX-License-Identifier: MIT
#include "base/units.hpp"
#include "room/check_seating.hpp"
#include "room/rows.hpp"
#include "room/screen_extent.hpp"
#include "room/seat_plan.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace rakeline::room {
namespace {

/// The seat of a block that goes farthest over a bound, and by how much.
struct Worst {
    const Seat* seat = nullptr;
    double over_m = 0.0;
};

template <class Over>
Worst worst_of(std::span<const Seat> seats, const Over& over) {
    Worst worst;
    for (const Seat& seat : seats) {
        const double by_m = over(seat);
        if (!worst.seat || by_m > worst.over_m) worst = {&seat, by_m};
    }
    return worst;
}

/// Seats of one block, which stand together in the plan.
std::span<const Seat> seats_of_block(const SeatPlan& plan, int block) {
    const auto first = std::ranges::find(plan.rows, block, &Row::block);
    const auto last =
        std::find_if(first, plan.rows.end(), [&](const Row& row) { return row.block != block; });
    if (first == last) return {};
    const int begin = first->first_seat;
    const int end = (last - 1)->first_seat + (last - 1)->seat_count;
    return std::span(plan.seats)
        .subspan(static_cast<std::size_t>(begin), static_cast<std::size_t>(end - begin));
}

void check_walls(const Hall& hall,
                 std::span<const Seat> seats,
                 const std::string& path,
                 Findings& out) {
    const Worst back = worst_of(seats, [&](const Seat& s) { return s.floor.z - hall.length_m; });
    if (back.over_m > 0.0) {
        out.add(path + ".rows",
                "seat " + back.seat->name + " stands " + metres(back.over_m) +
                    " beyond the booth wall at " + metres(hall.length_m),
                "take out rows, bring them closer, or move the block toward the screen");
        return;
    }
    const Worst side = worst_of(
        seats, [&](const Seat& s) { return std::abs(s.floor.x) - half_width_at(hall, s.floor.z); });
    if (side.over_m > 0.0) {
        out.add(
            path + ".seats_per_row",
            "seat " + side.seat->name + " stands " + metres(side.over_m) + " outside the side wall",
            "take out seats, bring them closer, or move the block to the middle");
    }
}

void check_before_screen(double foremost_m,
                         std::span<const Seat> seats,
                         const std::string& path,
                         Findings& out) {
    const Worst front = worst_of(seats, [&](const Seat& s) { return foremost_m - s.floor.z; });
    if (front.over_m < 0.0) return;
    out.add(path + ".first_row_back_m",
            "seat " + front.seat->name + " at " + metres(front.seat->floor.z) +
                " does not stand in front of the screen, which reaches to " + metres(foremost_m),
            "move the block back");
}

void check_ceiling(const Hall& hall,
                   std::span<const Seat> seats,
                   const std::string& path,
                   Findings& out) {
    const Worst high = worst_of(seats, [&](const Seat& s) { return s.eye.y - hall.height_m; });
    if (high.over_m <= 0.0) return;
    out.add(path + ".first_row_up_m",
            "eyes in seat " + high.seat->name + " are at " + metres(high.seat->eye.y) +
                ", above the ceiling at " + metres(hall.height_m),
            "rake the rows less, set them lower, or make the hall higher");
}

SeatPlanInput seat_plan_input(const Layout& layout) {
    return {layout.hall, layout.screen, layout.seating, layout.audience};
}

/// Whether every row bends by no more than a half circle.
bool arcs_hold(const Layout& layout,
               const SeatBlock& block,
               const std::string& path,
               Findings& out) {
    const std::vector<RowLine> rows = row_lines(seat_plan_input(layout), block);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].radius_m == 0.0) continue;
        const std::vector<double> along = seat_offsets(block, static_cast<int>(i), rows[i].seats);
        const double half_m = std::max(-along.front(), along.back());
        if (half_m <= 0.5 * base::kPi * rows[i].radius_m) continue;
        out.add(path + ".row_radius_m",
                "an arc of " + metres(rows[i].radius_m) + " can't hold row " +
                    std::to_string(i + 1) + " of the block, which is " +
                    metres(along.back() - along.front()) + " long",
                "make the radius larger, or 0 for straight rows");
        return false;
    }
    return true;
}

}  // namespace

void check_seat_places(const Layout& layout, Findings& out) {
    bool all_hold = true;
    for (std::size_t i = 0; i < layout.seating.size(); ++i)
        all_hold = arcs_hold(layout, layout.seating[i], at("seating", i), out) && all_hold;
    const auto screen = screen_extent(layout.screen);
    if (!all_hold || !screen) return;
    const SeatPlan plan = place_seats(seat_plan_input(layout));
    for (std::size_t i = 0; i < layout.seating.size(); ++i) {
        const auto seats = seats_of_block(plan, static_cast<int>(i));
        const std::string path = at("seating", i);
        if (seats.empty()) continue;
        check_walls(layout.hall, seats, path, out);
        check_before_screen(screen->foremost_m, seats, path, out);
        check_ceiling(layout.hall, seats, path, out);
    }
}

}  // namespace rakeline::room
