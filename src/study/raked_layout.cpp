// SPDX-License-Identifier: MIT
#include "study/raked_layout.hpp"

#include "base/assert.hpp"
#include "room/rows.hpp"
#include "study/rake_plan.hpp"
#include "study/slices.hpp"

#include <cmath>

namespace rakeline::study {
namespace {

std::vector<double> floors_of(const room::Layout& layout, const room::SeatBlock& block) {
    std::vector<double> out;
    for (const room::RowLine& row : room::row_lines(seat_plan_slice(layout), block))
        out.push_back(row.up_m);
    return out;
}

void stand_on(room::SeatBlock& block, const std::vector<double>& floor_m) {
    block.floor = room::BlockFloor::flights;
    block.first_row_up_m = floor_m.front();
    block.flights = flights_of(floor_m);
}

base::Result<room::Layout> checked(room::Layout layout) {
    auto problems = room::check_layout(layout);
    if (!problems.empty()) return problems;
    return layout;
}

}  // namespace

std::vector<room::Flight> flights_of(const std::vector<double>& floor_m) {
    constexpr double kRounding_m = 1e-9;  // risers that differ by less are one
    std::vector<room::Flight> out;
    for (std::size_t n = 1; n < floor_m.size(); ++n) {
        // Whole picometres: a file then says 0.15, not what sums of doubles leave.
        const double riser = std::round((floor_m[n] - floor_m[n - 1]) * 1e12) / 1e12;
        if (!out.empty() && std::abs(out.back().riser_m - riser) < kRounding_m) {
            ++out.back().rows;
        } else {
            out.push_back({1, riser});
        }
    }
    return out;
}

room::SeatBlock with_fixed_risers(const room::Layout& layout, int block) {
    room::SeatBlock out = layout.seating.at(static_cast<std::size_t>(block));
    const bool on_profile = room::stands_on_profile(seat_plan_slice(layout), out);
    if (!on_profile && out.floor == room::BlockFloor::equal_clearance)
        stand_on(out, floors_of(layout, out));
    return out;
}

base::Result<room::Layout> raked_layout(const room::Layout& layout,
                                        int block,
                                        const std::vector<double>& floor_m) {
    RL_ASSERT(!floor_m.empty());
    room::Layout out = layout;
    const auto b = static_cast<std::size_t>(block);
    if (room::stands_on_profile(seat_plan_slice(layout), layout.seating.at(b))) {
        for (std::size_t i = 0; i < layout.seating.size(); ++i) {
            const room::SeatBlock& seats = layout.seating[i];
            if (!seats.raised) stand_on(out.seating[i], floors_of(layout, seats));
        }
        out.hall.floor = room::FloorMode::by_seating;
    }
    stand_on(out.seating[b], floor_m);
    return checked(std::move(out));
}

base::Result<room::Layout> with_sill(const room::Layout& layout, double sill_m) {
    room::Layout out = layout;
    out.screen.sill_m = sill_m;
    return checked(std::move(out));
}

base::Result<room::Layout> with_spacing(const room::Layout& layout, int block, double spacing_m) {
    room::Layout out = layout;
    room::SeatBlock& seats = out.seating.at(static_cast<std::size_t>(block));
    seats = with_fixed_risers(layout, block);
    seats.row_spacing_m = spacing_m;
    return checked(std::move(out));
}

}  // namespace rakeline::study
