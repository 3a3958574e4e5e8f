// SPDX-License-Identifier: MIT
#pragma once

#include "sight/crowd.hpp"
#include "sight/test_picture.hpp"

#include <random>

/// Rooms for crowds: one block before one screen, from a layout's own parts.
namespace rakeline::tests {

struct CrowdRoom {
    room::SeatPlanInput plan;
    std::vector<double> ratios{1.85, 2.39};

    room::SeatBlock& block() { return plan.seating.front(); }
    room::Crowd& crowd() { return plan.audience.crowd; }

    sight::SightInput input() const {
        sight::SightInput in;
        in.surface = picture::screen_patch(plan.screen);
        for (const double ratio : ratios)
            in.openings.push_back(opening_of(plan.screen, ratio));
        in.seats = room::place_seats(plan);
        in.blocks = plan.seating;
        in.audience = plan.audience;
        return in;
    }
};

inline CrowdRoom crowd_room(int rows, int seats) {
    CrowdRoom out;
    out.plan.screen.width_m = 8.0;
    out.plan.screen.height_m = 8.0 / 1.85;
    out.plan.screen.sill_m = 1.2;
    room::SeatBlock block;
    block.rows = rows;
    block.seats_per_row = seats;
    block.first_row_back_m = 5.0;
    block.floor = room::BlockFloor::stepped;
    block.riser_m = 0.1;
    out.plan.seating = {block};
    return out;
}

inline CrowdRoom random_crowd_room(unsigned seed) {
    std::mt19937 random(seed);
    CrowdRoom out =
        crowd_room(2 + static_cast<int>(random() % 5), 3 + static_cast<int>(random() % 7));
    out.plan.screen.sill_m = between(random, 0.6, 1.6);
    out.plan.screen.radius_m = random() % 2 == 0 ? 0.0 : between(random, 12.0, 25.0);
    out.block().riser_m = between(random, 0.0, 0.3);
    out.block().row_spacing_m = between(random, 0.85, 1.2);
    out.crowd().women_fraction = between(random, 0.0, 1.0);
    out.crowd().taken_fraction = between(random, 0.3, 1.0);
    out.crowd().seed = static_cast<int>(random() % 1000);
    out.crowd().precision = 0.05;
    return out;
}

}  // namespace rakeline::tests
