// SPDX-License-Identifier: MIT
#include "room/platforms.hpp"

#include "room/floor_lines.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

/// Floor of the block's row under each point of an edge.
void lay_on_row(const Floor& floor, const FloorBlock& block, const RowLine& row, Line& line) {
    for (glm::dvec3& point : line) {
        point.y = floor_under(floor.in, *block.seats, row, point.z);
    }
}

struct Depth {
    double from_m = 0.0;
    double to_m = 0.0;
};

void add_row_strip(const Floor& floor,
                   const FloorBlock& block,
                   const RowLine& row,
                   Depth depth,
                   StripKind kind,
                   std::vector<Platform>& out) {
    Line front = block_line(floor, block, depth.from_m);
    Line back = block_line(floor, block, depth.to_m);
    for (Line* line : {&front, &back}) {
        lay_on_row(floor, block, row, *line);
    }
    add_strip(front, back, kind, out);
}

void add_treads(const Floor& floor, const FloorBlock& block, std::vector<Platform>& out) {
    const auto& rows = *block.rows;
    for (std::size_t n = 0; n < rows.size(); ++n) {
        const Depth tread{rows[n].back_m - block.ahead_m(), block.end_of(rows[n])};
        const int index = block.first_row + static_cast<int>(n);
        add_row_strip(floor, block, rows[n], tread, {PlatformKind::tread, index, block.index}, out);
        const double aisle = cross_aisle_behind(*block.seats, static_cast<int>(n));
        if (n + 1 == rows.size() || aisle == 0.0) continue;
        add_row_strip(floor, block, rows[n], {tread.to_m, tread.to_m + aisle},
                      {PlatformKind::cross_aisle, {}, block.index}, out);
    }
}

double front_wall_depth(const FloorBlock& block) {
    return block.seats->front_wall_m > 0.0 ? kFrontWallDepth_m : 0.0;
}

void add_front_wall(const Floor& floor, const FloorBlock& block, std::vector<Platform>& out) {
    if (block.seats->front_wall_m == 0.0) return;
    Line front = block_line(floor, block, block.front_m() - kFrontWallDepth_m);
    Line back = block_line(floor, block, block.front_m());
    for (Line* line : {&front, &back}) {
        set_height(*line, block.rows->front().up_m + block.seats->front_wall_m);
    }
    add_strip(front, back, {PlatformKind::balcony_front, {}, block.index}, out);
}

/// Level floor behind the last tread, to the booth wall.
void add_back(const Floor& floor, const FloorBlock& block, std::vector<Platform>& out) {
    Line front = block_line(floor, block, block.back_m());
    Line back = straight_line(floor, block.band, floor.in.hall.length_m);
    lay_on_row(floor, block, block.rows->back(), front);
    for (std::size_t i = 0; i < back.size(); ++i)
        back[i].y = front[i].y;
    add_strip(front, back, {PlatformKind::back, {}, block.index}, out);
}

/// Floor in front of the first tread: from the screen wall, or from the end of the block `ahead`.
void add_front(const Floor& floor,
               const FloorBlock& block,
               const FloorBlock* ahead,
               std::vector<Platform>& out) {
    Line back = block_line(floor, block, block.front_m() - front_wall_depth(block));
    Line front = straight_line(floor, block.band, 0.0);
    if (ahead) {
        // Along the arcs of the block ahead, but as wide as this one's floor.
        FloorBlock edge = *ahead;
        edge.band = block.band;
        front = block_line(floor, edge, ahead->back_m());
    }
    lay_on_row(floor, block, block.rows->front(), back);
    for (std::size_t i = 0; i < front.size(); ++i)
        front[i].y = back[i].y;
    add_strip(front, back,
              {ahead ? PlatformKind::cross_aisle : PlatformKind::front, {}, block.index}, out);
}

/// The hall's profile as strips, cut where the seating on it begins and ends.
void add_profile(const Floor& floor,
                 const std::vector<FloorBlock>& blocks,
                 std::vector<Platform>& out) {
    const Hall& hall = floor.in.hall;
    double first = hall.length_m;
    double last = blocks.empty() ? hall.length_m : 0.0;
    std::vector<double> cuts{0.0, hall.length_m};
    for (const FloorPoint& point : hall.floor_profile)
        cuts.push_back(point.back_m);
    for (const FloorBlock& block : blocks) {
        first = std::min(first, block.front_m());
        last = std::max(last, block.back_m());
    }
    cuts.insert(cuts.end(), {first, last});
    for (double& cut : cuts)
        cut = std::clamp(cut, 0.0, hall.length_m);
    std::ranges::sort(cuts);
    const Floor whole{floor.in, 1};
    for (std::size_t i = 1; i < cuts.size(); ++i) {
        Line front = straight_line(whole, {}, cuts[i - 1]);
        Line back = straight_line(whole, {}, cuts[i]);
        set_height(front, profile_height(hall.floor_profile, cuts[i - 1]));
        set_height(back, profile_height(hall.floor_profile, cuts[i]));
        const double middle = 0.5 * (cuts[i - 1] + cuts[i]);
        const PlatformKind kind = middle < first  ? PlatformKind::front
                                  : middle > last ? PlatformKind::back
                                                  : PlatformKind::tread;
        add_strip(front, back, {kind, {}}, out);
    }
}

void add_hall_floor(const Floor& floor,
                    const std::vector<FloorBlock>& blocks,
                    std::vector<Platform>& out) {
    for (const FloorBlock& block : blocks) {
        add_front(floor, block, block_ahead(blocks, block), out);
        add_treads(floor, block, out);
        if (is_rearmost(blocks, block)) add_back(floor, block, out);
    }
    if (!blocks.empty()) return;
    const Floor whole{floor.in, 1};
    add_strip(straight_line(whole, {}, 0.0), straight_line(whole, {}, floor.in.hall.length_m),
              {PlatformKind::front, {}}, out);
}

void add_raised(const Floor& floor, FloorBlock block, std::vector<Platform>& out) {
    const double reach = half_extent(block) + kRaisedSideAisle_m;
    block.band = {block.seats->across_m - reach, block.seats->across_m + reach};
    add_treads(floor, block, out);
    add_back(floor, block, out);
    add_front_wall(floor, block, out);
}

}  // namespace

std::vector<Platform> platforms(const SeatPlanInput& in,
                                const std::vector<std::vector<RowLine>>& rows) {
    std::vector<Platform> out;
    const Floor floor{in, chords_for(in)};
    const std::vector<FloorBlock> on_floor = floor_blocks(in, rows, false);
    if (in.hall.floor == FloorMode::by_profile) {
        add_profile(floor, on_floor, out);
    } else {
        add_hall_floor(floor, on_floor, out);
    }
    for (const FloorBlock& block : on_floor)
        add_front_wall(floor, block, out);
    for (const FloorBlock& block : floor_blocks(in, rows, true))
        add_raised(floor, block, out);
    return out;
}

}  // namespace rakeline::room
