// SPDX-License-Identifier: MIT
#include "room/floor_lines.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

bool abreast(const FloorBlock& a, const FloorBlock& b) {
    return a.front_m() < b.back_m() && b.front_m() < a.back_m();
}

/// Blocks side by side share the floor half-way between their outermost seats.
void share_floor(std::vector<FloorBlock>& blocks) {
    for (FloorBlock& block : blocks) {
        for (const FloorBlock& other : blocks) {
            const double apart = other.seats->across_m - block.seats->across_m;
            if (apart == 0.0 || !abreast(block, other)) continue;
            const double gap = std::abs(apart) - half_extent(block) - half_extent(other);
            const double reach = half_extent(block) + 0.5 * gap;
            const double x = block.seats->across_m;
            if (apart > 0.0) block.band.right_m = std::min(block.band.right_m, x + reach);
            if (apart < 0.0) block.band.left_m = std::max(block.band.left_m, x - reach);
        }
    }
}

}  // namespace

double half_extent(const FloorBlock& block) {
    double half = 0.0;
    for (std::size_t n = 0; n < block.rows->size(); ++n) {
        const auto offsets =
            seat_offsets(*block.seats, static_cast<int>(n), (*block.rows)[n].seats);
        half = std::max({half, -offsets.front(), offsets.back()});
    }
    return half + 0.5 * block.seats->seat_pitch_m;
}

std::vector<FloorBlock> floor_blocks(const SeatPlanInput& in,
                                     const std::vector<std::vector<RowLine>>& rows,
                                     bool raised) {
    std::vector<FloorBlock> blocks;
    for (std::size_t b = 0; b < in.seating.size(); ++b) {
        if (in.seating[b].raised != raised || rows[b].empty()) continue;
        FloorBlock block{&in.seating[b], &rows[b], {}, 0, static_cast<int>(b)};
        for (std::size_t before = 0; before < b; ++before) {
            block.first_row += static_cast<int>(rows[before].size());
        }
        blocks.push_back(block);
    }
    if (!raised) share_floor(blocks);
    return blocks;
}

const FloorBlock* block_ahead(const std::vector<FloorBlock>& blocks, const FloorBlock& block) {
    const FloorBlock* nearest = nullptr;
    for (const FloorBlock& other : blocks) {
        if (&other == &block || other.back_m() > block.front_m()) continue;
        if (!nearest || other.back_m() > nearest->back_m()) nearest = &other;
    }
    return nearest;
}

bool is_rearmost(const std::vector<FloorBlock>& blocks, const FloorBlock& block) {
    return std::ranges::none_of(
        blocks, [&](const FloorBlock& other) { return other.front_m() >= block.back_m(); });
}

}  // namespace rakeline::room
