// SPDX-License-Identifier: MIT
#include "sight/blockers.hpp"

#include <cmath>

namespace rakeline::sight {
namespace {

const room::SeatBlock& block_of(const room::SeatPlan& plan,
                                const std::vector<room::SeatBlock>& blocks,
                                int row) {
    const int block = plan.rows[static_cast<std::size_t>(row)].block;
    return blocks[static_cast<std::size_t>(block)];
}

Wall seat_back(const room::Seat& seat, const room::SeatBlock& block, int index) {
    const glm::dvec3 rightward{-seat.facing.z, 0.0, seat.facing.x};
    const glm::dvec3 middle = seat.floor + glm::dvec3(0.0, block.seat_back_m, 0.0);
    const glm::dvec3 half = 0.5 * kShoulderWidthRatio * block.seat_pitch_m * rightward;
    return {middle - half, middle + half, WallHides::below, seat.floor.y, index};
}

/// Floor under a balcony's front: of the block whose front wall ends at this height.
double floor_of_front(const room::SeatPlan& plan,
                      const std::vector<room::SeatBlock>& blocks,
                      double top_m) {
    double best_m = top_m;
    double off_m = 1e9;
    for (const room::Row& row : plan.rows) {
        const double wall_m = blocks[static_cast<std::size_t>(row.block)].front_wall_m;
        const double off = std::abs(row.centre_floor.y + wall_m - top_m);
        if (wall_m == 0.0 || off >= off_m) continue;
        off_m = off;
        best_m = row.centre_floor.y;
    }
    return best_m;
}

/// The wall is solid: it hides below its near and its far upper edge.
void add_balcony_front(const room::Platform& top, double floor_m, std::vector<Wall>& out) {
    const auto& c = top.corners;  // front left, back left, back right, front right
    out.push_back({c[0], c[3], WallHides::below, floor_m, -1});
    out.push_back({c[1], c[2], WallHides::below, floor_m, -1});
}

void add_underside(const room::Platform& tread, std::vector<Wall>& out) {
    out.push_back({tread.corners[0], tread.corners[3], WallHides::above, 0.0, -1});
}

bool is_raised_front(const room::SeatPlan& plan,
                     const std::vector<room::SeatBlock>& blocks,
                     const room::Platform& platform) {
    if (platform.kind != room::PlatformKind::tread || !platform.row) return false;
    const int row = *platform.row;
    if (!block_of(plan, blocks, row).raised) return false;
    return row == 0 || plan.rows[static_cast<std::size_t>(row - 1)].block !=
                           plan.rows[static_cast<std::size_t>(row)].block;
}

}  // namespace

Blockers full_house(const room::SeatPlan& plan,
                    const std::vector<room::SeatBlock>& blocks,
                    const room::Audience& audience) {
    Blockers out;
    for (std::size_t i = 0; i < plan.seats.size(); ++i) {
        const room::Seat& seat = plan.seats[i];
        const int index = static_cast<int>(i);
        out.heads.push_back(
            {seat.eye, 0.5 * audience.head_breadth_m, audience.eye_to_crown_m, index});
        if (seat.wheelchair) continue;
        out.walls.push_back(seat_back(seat, block_of(plan, blocks, seat.row), index));
    }
    for (const room::Platform& platform : plan.platforms) {
        if (platform.kind == room::PlatformKind::balcony_front) {
            const double top_m = platform.corners[0].y;
            add_balcony_front(platform, floor_of_front(plan, blocks, top_m), out.walls);
        } else if (is_raised_front(plan, blocks, platform)) {
            add_underside(platform, out.walls);
        }
    }
    return out;
}

}  // namespace rakeline::sight
