// SPDX-License-Identifier: MIT
#include "room/cross_aisles.hpp"

#include "room/platforms.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

/// What the seats of a row take up along it, from house left to house right.
struct Extent {
    double left_m = 0.0;
    double right_m = 0.0;
};

Extent extent_of(const SeatBlock& block, int row, int seats) {
    const std::vector<double> offsets = seat_offsets(block, row, seats);
    return {offsets.front() - 0.5 * block.seat_pitch_m, offsets.back() + 0.5 * block.seat_pitch_m};
}

CrossAisleLine line_behind(const SeatPlanInput& in,
                           const SeatBlock& block,
                           const std::vector<RowLine>& rows,
                           int n,
                           double pitch_m) {
    const RowLine& ahead = rows[static_cast<std::size_t>(n)];
    const double off_m =
        (1.0 - kTreadAheadFraction) * block.row_spacing_m + 0.5 * cross_aisle_behind(block, n);
    RowLine line = ahead;
    line.back_m += off_m;
    if (line.radius_m > 0.0) line.radius_m += off_m;
    const auto on_floor = [&](double along_m) {
        PlaceAlong place = place_along(block, line, along_m);
        place.floor.y = floor_under(in, block, ahead, place.floor.z);
        return place;
    };
    const Extent one = extent_of(block, n, ahead.seats);
    const Extent other = extent_of(block, n + 1, rows[static_cast<std::size_t>(n) + 1].seats);
    const double left_m = std::min(one.left_m, other.left_m);
    const double right_m = std::max(one.right_m, other.right_m);
    const int people = std::max(1, static_cast<int>(std::floor((right_m - left_m) / pitch_m)));
    CrossAisleLine out;
    out.middle = on_floor(0.0).floor;
    for (int i = 0; i < people; ++i) {
        const double from_middle = (i - 0.5 * (people - 1)) * pitch_m;
        out.standing.push_back(on_floor(0.5 * (left_m + right_m) + from_middle));
    }
    return out;
}

}  // namespace

std::vector<CrossAisleLine> cross_aisle_lines(const SeatPlanInput& in, double pitch_m) {
    std::vector<CrossAisleLine> out;
    int first_row = 0;
    for (const SeatBlock& block : in.seating) {
        const std::vector<RowLine> rows = row_lines(in, block);
        const int count = static_cast<int>(rows.size());
        for (int n = 0; n + 1 < count; ++n) {
            if (cross_aisle_behind(block, n) == 0.0) continue;
            out.push_back(line_behind(in, block, rows, n, pitch_m));
            out.back().row_behind = first_row + n + 1;
        }
        first_row += count;
    }
    return out;
}

}  // namespace rakeline::room
