// SPDX-License-Identifier: MIT
#include "room/platforms.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace rakeline::room {
namespace {

using Line = std::vector<glm::dvec3>;  ///< an edge across the floor, from house left

/// Walls that a block's floor reaches to, besides those of the hall.
struct Band {
    double left_m = -std::numeric_limits<double>::infinity();
    double right_m = std::numeric_limits<double>::infinity();
};

struct Block {
    const SeatBlock* seats = nullptr;
    const std::vector<RowLine>* rows = nullptr;
    Band band;
    int first_row = 0;  ///< index in SeatPlan::rows

    double ahead_m() const { return kTreadAheadFraction * seats->row_spacing_m; }
    double front_m() const { return rows->front().back_m - ahead_m(); }
    double end_of(const RowLine& row) const {
        return row.back_m + seats->row_spacing_m - ahead_m();
    }
    double back_m() const { return end_of(rows->back()); }
    double first_height_m() const { return rows->front().up_m; }
};

/// What cutting the floor needs everywhere.
struct Floor {
    const SeatPlanInput& in;
    int chords = 1;  ///< parts of every edge across the hall
};

double left_at(const Hall& hall, const Band& band, double back_m) {
    return std::max(-half_width_at(hall, back_m), band.left_m);
}
double right_at(const Hall& hall, const Band& band, double back_m) {
    return std::min(half_width_at(hall, back_m), band.right_m);
}

/// Edge straight across at `back_m`.
Line straight_line(const Floor& floor, const Band& band, double back_m) {
    const double left = left_at(floor.in.hall, band, back_m);
    const double right = right_at(floor.in.hall, band, back_m);
    Line line;
    for (int i = 0; i <= floor.chords; ++i) {
        line.emplace_back(left + (right - left) * i / floor.chords, 0.0, back_m);
    }
    return line;
}

/// Angle from the centre line at which an arc of radius `radius_m` about `centre` meets the wall
/// on the side of +x, or `limit_m`, whichever comes first. With the wall x = w/2 + z tan(s):
/// r sin(a - s) = (w/2 + z0 tan(s) - x0) cos(s).
double end_angle(const Hall& hall, glm::dvec2 centre, double radius_m, double limit_m) {
    if (radius_m <= 0.0) return 0.0;
    const double off_wall =
        (half_width_at(hall, centre.y) - centre.x) * std::cos(hall.splay_rad) / radius_m;
    const double off_limit = (limit_m - centre.x) / radius_m;
    const double to_wall = hall.splay_rad + std::asin(std::clamp(off_wall, -1.0, 1.0));
    const double to_limit = std::asin(std::clamp(off_limit, -1.0, 1.0));
    return std::min({to_wall, to_limit, 0.5 * base::kPi});
}

/// Edge along the block's arcs that crosses its centre line at `back_m` (straight if they are).
Line block_line(const Floor& floor, const Block& block, double back_m) {
    if (block.seats->row_radius_m == 0.0) return straight_line(floor, block.band, back_m);
    const double x0 = block.seats->across_m;
    const double z0 = arc_centre_back(*block.seats);
    const double radius = std::max(back_m - z0, 0.0);
    // The left end is the right end of the mirrored hall.
    const double left = -end_angle(floor.in.hall, {-x0, z0}, radius, -block.band.left_m);
    const double right = end_angle(floor.in.hall, {x0, z0}, radius, block.band.right_m);
    Line line;
    for (int i = 0; i <= floor.chords; ++i) {
        const double angle = left + (right - left) * i / floor.chords;
        line.emplace_back(x0 + radius * std::sin(angle), 0.0, z0 + radius * std::cos(angle));
    }
    return line;
}

void set_height(Line& line, double up_m) {
    for (glm::dvec3& point : line)
        point.y = up_m;
}

void keep_in_hall(Line& line, const Hall& hall) {
    for (glm::dvec3& point : line)
        point.z = std::clamp(point.z, 0.0, hall.length_m);
}

/// Quadrilaterals between two edges of equal count; slivers of no depth are left out.
void add_strip(const Line& front,
               const Line& back,
               PlatformKind kind,
               std::optional<int> row,
               std::vector<Platform>& out) {
    constexpr double kLeastDepth_m = 1e-6;
    for (std::size_t i = 1; i < front.size(); ++i) {
        const bool deep = back[i - 1].z - front[i - 1].z > kLeastDepth_m ||
                          back[i].z - front[i].z > kLeastDepth_m;
        if (deep) out.push_back({kind, {front[i - 1], back[i - 1], back[i], front[i]}, row});
    }
}

/// Floor of the block's row under each point of an edge.
void lay_on_row(const Floor& floor, const Block& block, const RowLine& row, Line& line) {
    for (glm::dvec3& point : line) {
        point.y = floor_under(floor.in, *block.seats, row, point.z);
    }
}

struct Depth {
    double from_m = 0.0;
    double to_m = 0.0;
};

void add_row_strip(const Floor& floor,
                   const Block& block,
                   const RowLine& row,
                   Depth depth,
                   PlatformKind kind,
                   std::optional<int> index,
                   std::vector<Platform>& out) {
    Line front = block_line(floor, block, depth.from_m);
    Line back = block_line(floor, block, depth.to_m);
    for (Line* line : {&front, &back}) {
        keep_in_hall(*line, floor.in.hall);
        lay_on_row(floor, block, row, *line);
    }
    add_strip(front, back, kind, index, out);
}

void add_treads(const Floor& floor, const Block& block, std::vector<Platform>& out) {
    const auto& rows = *block.rows;
    for (std::size_t n = 0; n < rows.size(); ++n) {
        const Depth tread{rows[n].back_m - block.ahead_m(), block.end_of(rows[n])};
        const int index = block.first_row + static_cast<int>(n);
        add_row_strip(floor, block, rows[n], tread, PlatformKind::tread, index, out);
        const double aisle = cross_aisle_behind(*block.seats, static_cast<int>(n));
        if (n + 1 == rows.size() || aisle == 0.0) continue;
        add_row_strip(floor, block, rows[n], {tread.to_m, tread.to_m + aisle},
                      PlatformKind::cross_aisle, {}, out);
    }
}

double front_wall_depth(const Block& block) {
    return block.seats->front_wall_m > 0.0 ? kFrontWallDepth_m : 0.0;
}

void add_front_wall(const Floor& floor, const Block& block, std::vector<Platform>& out) {
    if (block.seats->front_wall_m == 0.0) return;
    Line front = block_line(floor, block, block.front_m() - kFrontWallDepth_m);
    Line back = block_line(floor, block, block.front_m());
    for (Line* line : {&front, &back}) {
        keep_in_hall(*line, floor.in.hall);
        set_height(*line, block.first_height_m() + block.seats->front_wall_m);
    }
    add_strip(front, back, PlatformKind::balcony_front, {}, out);
}

/// Level floor behind the last tread, to the booth wall.
void add_back(const Floor& floor, const Block& block, std::vector<Platform>& out) {
    Line front = block_line(floor, block, block.back_m());
    Line back = straight_line(floor, block.band, floor.in.hall.length_m);
    keep_in_hall(front, floor.in.hall);
    lay_on_row(floor, block, block.rows->back(), front);
    for (std::size_t i = 0; i < back.size(); ++i)
        back[i].y = front[i].y;
    add_strip(front, back, PlatformKind::back, {}, out);
}

/// Floor in front of the first tread: from the screen wall, or from the end of the block `ahead`.
void add_front(const Floor& floor,
               const Block& block,
               const Block* ahead,
               std::vector<Platform>& out) {
    Line back = block_line(floor, block, block.front_m() - front_wall_depth(block));
    Line front =
        ahead ? block_line(floor, *ahead, ahead->back_m()) : straight_line(floor, block.band, 0.0);
    for (Line* line : {&front, &back})
        keep_in_hall(*line, floor.in.hall);
    lay_on_row(floor, block, block.rows->front(), back);
    for (std::size_t i = 0; i < front.size(); ++i)
        front[i].y = back[i].y;
    add_strip(front, back, ahead ? PlatformKind::cross_aisle : PlatformKind::front, {}, out);
}

/// How far the widest row reaches from the block's centre line.
double half_extent(const Block& block) {
    double half = 0.0;
    for (std::size_t n = 0; n < block.rows->size(); ++n) {
        const auto offsets =
            seat_offsets(*block.seats, static_cast<int>(n), (*block.rows)[n].seats);
        half = std::max({half, -offsets.front(), offsets.back()});
    }
    return half + 0.5 * block.seats->seat_pitch_m;
}

bool abreast(const Block& a, const Block& b) {
    return a.front_m() < b.back_m() && b.front_m() < a.back_m();
}

/// Blocks side by side share the floor half-way between their outermost seats.
void share_floor(std::vector<Block>& blocks) {
    for (Block& block : blocks) {
        for (const Block& other : blocks) {
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

/// The nearest block wholly in front of this one, if any.
const Block* block_ahead(const std::vector<Block>& blocks, const Block& block) {
    const Block* nearest = nullptr;
    for (const Block& other : blocks) {
        if (&other == &block || other.back_m() > block.front_m()) continue;
        if (!nearest || other.back_m() > nearest->back_m()) nearest = &other;
    }
    return nearest;
}

bool is_rearmost(const std::vector<Block>& blocks, const Block& block) {
    return std::ranges::none_of(
        blocks, [&](const Block& other) { return other.front_m() >= block.back_m(); });
}

int chords_for(const SeatPlanInput& in) {
    double most = 1.0;
    for (const SeatBlock& block : in.seating) {
        if (block.row_radius_m == 0.0) continue;
        const double radius = std::max(block.row_radius_m, 1.0);
        const double widest =
            2.0 * std::max(half_width_at(in.hall, 0.0), half_width_at(in.hall, in.hall.length_m));
        // Sagitta of a chord c is c^2/(8 r); an arc is at most half a circle.
        const double arc = std::min(1.5 * widest, base::kPi * radius);
        most = std::max(most, std::ceil(arc / std::sqrt(8.0 * radius * kChordError_m)));
    }
    return static_cast<int>(std::min(most, 64.0));
}

/// The hall's profile as strips, cut where the seating on it begins and ends.
void add_profile(const Floor& floor, const std::vector<Block>& blocks, std::vector<Platform>& out) {
    const Hall& hall = floor.in.hall;
    double first = hall.length_m;
    double last = hall.length_m;
    std::vector<double> cuts{0.0, hall.length_m};
    for (const FloorPoint& point : hall.floor_profile)
        cuts.push_back(point.back_m);
    for (const Block& block : blocks) {
        first = std::min(first, block.front_m());
        last = last == hall.length_m ? block.back_m() : std::max(last, block.back_m());
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
        add_strip(front, back, kind, {}, out);
    }
}

std::vector<Block> blocks_of(const SeatPlanInput& in,
                             const std::vector<std::vector<RowLine>>& rows,
                             bool raised) {
    std::vector<Block> blocks;
    for (std::size_t b = 0; b < in.seating.size(); ++b) {
        if (in.seating[b].raised != raised || rows[b].empty()) continue;
        Block block{&in.seating[b], &rows[b], {}, 0};
        for (std::size_t before = 0; before < b; ++before) {
            block.first_row += static_cast<int>(rows[before].size());
        }
        blocks.push_back(block);
    }
    return blocks;
}

void add_hall_floor(const Floor& floor, std::vector<Block>& blocks, std::vector<Platform>& out) {
    share_floor(blocks);
    for (const Block& block : blocks) {
        add_front(floor, block, block_ahead(blocks, block), out);
        add_treads(floor, block, out);
        if (is_rearmost(blocks, block)) add_back(floor, block, out);
    }
    if (!blocks.empty()) return;
    const Floor whole{floor.in, 1};
    add_strip(straight_line(whole, {}, 0.0), straight_line(whole, {}, floor.in.hall.length_m),
              PlatformKind::front, {}, out);
}

void add_raised(const Floor& floor, Block block, std::vector<Platform>& out) {
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
    std::vector<Block> on_floor = blocks_of(in, rows, false);
    if (in.hall.floor == FloorMode::by_profile) {
        add_profile(floor, on_floor, out);
    } else {
        add_hall_floor(floor, on_floor, out);
    }
    for (const Block& block : on_floor)
        add_front_wall(floor, block, out);
    for (const Block& block : blocks_of(in, rows, true))
        add_raised(floor, block, out);
    return out;
}

}  // namespace rakeline::room
