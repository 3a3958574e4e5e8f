// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"
#include "sight/rake_rows.hpp"
#include "sight/test_picture.hpp"

#include <random>

/// Seeded rooms with one block, two formats and any screen, for the rake solver.
namespace rakeline::tests {

struct RakeRoom {
    room::SeatPlanInput seats;
    geometry::Patch surface;
    std::vector<picture::Opening> openings;

    room::SeatBlock& block() { return seats.seating.front(); }
    room::SeatPlan plan() const { return room::place_seats(seats); }
    sight::RakeRows rows(sight::RakeOver over) const {
        const auto out = sight::rake_rows(surface, openings, plan(), 0, over, seats.hall.height_m);
        return out.value();
    }
};

inline RakeRoom random_rake_room(std::mt19937& random, int rows_least, int rows_most) {
    RakeRoom out;
    room::Hall& hall = out.seats.hall;
    hall.width_m = 24.0;
    hall.length_m = 60.0;
    hall.height_m = between(random, 6.0, 9.0);
    room::Screen& screen = out.seats.screen;
    screen.width_m = between(random, 8.0, 14.0);
    screen.height_m = screen.width_m / 2.0;
    screen.sill_m = between(random, 0.6, 1.9);
    screen.tilt_rad = between(random, -0.04, 0.08);
    screen.radius_m = random() % 2 ? between(random, 1.5, 4.0) * screen.width_m : 0.0;
    screen.masking = static_cast<room::MaskingMode>(random() % 4);
    screen.moving_edge = static_cast<room::MovingEdge>(random() % 3);
    room::SeatBlock block;
    block.rows = rows_least + static_cast<int>(random() % unsigned(rows_most - rows_least + 1));
    block.first_row_back_m = between(random, 4.5, 9.0);
    block.first_row_up_m = between(random, -0.5, 0.5);
    block.row_spacing_m = between(random, 0.9, 1.3);
    block.row_radius_m = random() % 2 ? between(random, 15.0, 40.0) : 0.0;
    block.staggered = random() % 2 == 0;
    block.floor = room::BlockFloor::level;
    if (random() % 2) block.cross_aisles = {{2, between(random, 1.0, 1.8)}};
    out.seats.seating = {block};
    out.surface = picture::screen_patch(screen);
    for (const double aspect : {1.85, 2.39})
        out.openings.push_back(opening_of(screen, aspect));
    return out;
}

/// The block on floors of its own, each a flight.
inline room::SeatBlock on_floors(room::SeatBlock block, const std::vector<double>& floor_m) {
    block.floor = room::BlockFloor::flights;
    block.first_row_up_m = floor_m.front();
    block.flights.clear();
    for (std::size_t n = 1; n < floor_m.size(); ++n)
        block.flights.push_back({1, floor_m[n] - floor_m[n - 1]});
    return block;
}

}  // namespace rakeline::tests
