// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"
#include "sight/test_picture.hpp"

#include <algorithm>
#include <random>

/// Seeded rooms of one block with arcs, aisles, cross aisles, rows that grow, and wheelchair
/// places, before a picture of any shape; and their mirror images.
namespace rakeline::tests {

struct SeatsRoom {
    room::SeatPlanInput in;
    room::SeatPlan plan;
    Picture picture;
};

inline void place(SeatsRoom& room) {
    room.plan = room::place_seats(room.in);
    const room::Screen& screen = room.in.screen;
    room.picture = {picture::screen_patch(screen),
                    opening_of(screen, screen.width_m / screen.height_m)};
}

inline SeatsRoom random_seats_room(std::mt19937& random) {
    SeatsRoom out;
    out.in.hall.width_m = 40.0;
    out.in.hall.length_m = 60.0;
    out.in.hall.height_m = 20.0;
    room::Screen& screen = out.in.screen;
    screen.width_m = between(random, 5.0, 16.0);
    screen.height_m = screen.width_m / between(random, 1.4, 2.5);
    screen.sill_m = between(random, 0.6, 1.8);
    screen.tilt_rad = random() % 2 ? 0.0 : between(random, -0.05, 0.1);
    screen.radius_m = random() % 2 ? 0.0 : between(random, 1.2, 4.0) * screen.width_m;
    room::SeatBlock block;
    block.rows = 3 + static_cast<int>(random() % 8);
    block.seats_per_row = 6 + static_cast<int>(random() % 14);
    block.seats_added_per_row = static_cast<int>(random() % 3) - 1 + (block.rows > 6 ? 1 : 0);
    block.first_row_back_m = between(random, 4.5, 9.0);
    block.row_spacing_m = between(random, 0.9, 1.3);
    block.row_radius_m = random() % 2 ? between(random, 12.0, 40.0) : 0.0;
    block.riser_m = between(random, 0.0, 0.4);
    block.staggered = random() % 2 == 0;
    if (random() % 2) block.aisles = {{3, between(random, 0.9, 1.4)}};
    block.cross_aisles = {{1 + static_cast<int>(random() % (block.rows - 1)), 1.3}};
    block.wheelchair_places = {{"A", 2}, {"B", 3}};
    out.in.seating = {block};
    place(out);
    return out;
}

/// The seats mirrored left to right: rows still count from house left.
inline room::SeatPlan mirrored(room::SeatPlan plan) {
    for (room::Seat& seat : plan.seats) {
        seat.floor.x = -seat.floor.x;
        seat.eye.x = -seat.eye.x;
        seat.facing.x = -seat.facing.x;
    }
    for (const room::Row& row : plan.rows) {
        const auto first = plan.seats.begin() + row.first_seat;
        std::reverse(first, first + row.seat_count);
    }
    return plan;
}

}  // namespace rakeline::tests
