// SPDX-License-Identifier: MIT
#include "room/rows.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace rakeline::room {
namespace {

/// The nearest point of the frame's lower edge on the centre line, as (back, up). A tilted screen
/// turns about its horizontal centre line, which brings its lower edge toward the seats.
FloorPoint focus_of(const Screen& screen) {
    const double half = 0.5 * screen.height_m;
    return {screen.setback_m + half * std::sin(screen.tilt_rad),
            screen.sill_m + half - half * std::cos(screen.tilt_rad)};
}

/// Floor of each row with the same clearance over the row in front, by the exact recursion in eye
/// height over the focus:
///
///     y[n+1] = (y[n] + C) x[n+1]/x[n]     [m]
///       x  horizontal distance from the focus to the eye, m, > 0
///       C  clearance over the eye in front, m
///
/// Source: the sight-line form of EN 13200-1, N = (R + C)(D + T)/D - R, with y[n+1] = R + N.
void raise_for_clearance(const SeatPlanInput& in,
                         const SeatBlock& block,
                         std::vector<RowLine>& rows) {
    const FloorPoint focus = focus_of(in.screen);
    const double eye_over_focus = in.audience.eye_height_m - focus.up_m;
    for (std::size_t n = 1; n < rows.size(); ++n) {
        const double x_front = rows[n - 1].back_m - focus.back_m;
        const double x = rows[n].back_m - focus.back_m;
        const double y_front = rows[n - 1].up_m + eye_over_focus;
        rows[n].up_m = x_front > 0.0 ? (y_front + block.wanted_c_m) * x / x_front - eye_over_focus
                                     : rows[n - 1].up_m;
    }
}

/// Risers flight after flight; the last one's goes on.
void raise_by_flights(const SeatBlock& block, std::vector<RowLine>& rows) {
    if (block.flights.empty()) return;
    auto flight = block.flights.begin();
    int left = flight->rows;
    for (std::size_t n = 1; n < rows.size(); ++n) {
        if (left == 0 && std::next(flight) != block.flights.end()) left = (++flight)->rows;
        rows[n].up_m = rows[n - 1].up_m + flight->riser_m;
        left = std::max(left - 1, 0);
    }
}

void set_heights(const SeatPlanInput& in, const SeatBlock& block, std::vector<RowLine>& rows) {
    for (std::size_t n = 0; n < rows.size(); ++n) {
        const double steps = block.floor == BlockFloor::stepped ? static_cast<double>(n) : 0.0;
        rows[n].up_m = block.first_row_up_m + steps * block.riser_m;
    }
    if (block.floor == BlockFloor::equal_clearance) raise_for_clearance(in, block, rows);
    if (block.floor == BlockFloor::flights) raise_by_flights(block, rows);
    for (RowLine& row : rows)
        row.up_m = floor_under(in, block, row, row.back_m);
}

/// Seats to the house left of the aisle in row `row`, by half seats away from the row's middle.
int aisle_place(const SeatBlock& block, const Aisle& aisle, int row, int seats) {
    const int twice = 2 * aisle.after_seat + block.seats_added_per_row * row;
    if (twice % 2 == 0) return twice / 2;
    return twice > seats ? (twice + 1) / 2 : (twice - 1) / 2;
}

bool shifted(const SeatBlock& block, int row) {
    const bool centring_staggers = block.seats_added_per_row % 2 != 0;
    return block.staggered && !centring_staggers && row % 2 != 0;
}

}  // namespace

bool stands_on_profile(const SeatPlanInput& in, const SeatBlock& block) {
    return in.hall.floor == FloorMode::by_profile && !block.raised;
}

double arc_centre_back(const SeatBlock& block) {
    return block.first_row_back_m - block.row_radius_m;
}

double cross_aisle_behind(const SeatBlock& block, int row) {
    double width_m = 0.0;
    for (const CrossAisle& aisle : block.cross_aisles) {
        if (aisle.after_row == row + 1) width_m += aisle.width_m;
    }
    return width_m;
}

PlaceAlong place_along(const SeatBlock& block, const RowLine& row, double along_m) {
    if (row.radius_m == 0.0) return {{block.across_m + along_m, 0.0, row.back_m}};
    const double angle = along_m / row.radius_m;
    const glm::dvec3 outward{std::sin(angle), 0.0, std::cos(angle)};
    // From the crossing of the centre line, so that a large radius costs no digits.
    const double fall = 2.0 * row.radius_m * std::pow(std::sin(0.5 * angle), 2);
    return {{block.across_m + row.radius_m * outward.x, 0.0, row.back_m - fall}, -outward};
}

double floor_under(const SeatPlanInput& in,
                   const SeatBlock& block,
                   const RowLine& row,
                   double back_m) {
    if (stands_on_profile(in, block)) return profile_height(in.hall.floor_profile, back_m);
    if (block.floor != BlockFloor::slope) return row.up_m;
    return block.first_row_up_m + std::tan(block.slope_rad) * (back_m - block.first_row_back_m);
}

std::vector<RowLine> row_lines(const SeatPlanInput& in, const SeatBlock& block) {
    std::vector<RowLine> rows;
    double distance_m = 0.0;
    for (int n = 0; n < block.rows; ++n) {
        const int seats = block.seats_per_row + n * block.seats_added_per_row;
        if (seats < 1) break;
        const double radius = block.row_radius_m > 0.0 ? block.row_radius_m + distance_m : 0.0;
        rows.push_back({block.first_row_back_m + distance_m, 0.0, radius, seats});
        distance_m += block.row_spacing_m + cross_aisle_behind(block, n);
    }
    set_heights(in, block, rows);
    return rows;
}

std::vector<double> seat_offsets(const SeatBlock& block, int row, int seats) {
    std::vector<double> offsets;
    double along = 0.0;
    for (int seat = 0; seat < seats; ++seat) {
        if (seat > 0) along += block.seat_pitch_m;
        for (const Aisle& aisle : block.aisles) {
            if (seat > 0 && aisle_place(block, aisle, row, seats) == seat) along += aisle.width_m;
        }
        offsets.push_back(along);
    }
    const double middle = 0.5 * along - (shifted(block, row) ? 0.5 * block.seat_pitch_m : 0.0);
    for (double& offset : offsets)
        offset -= middle;
    return offsets;
}

}  // namespace rakeline::room
