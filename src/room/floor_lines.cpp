// SPDX-License-Identifier: MIT
#include "room/floor_lines.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

double left_at(const Hall& hall, const Band& band, double back_m) {
    return std::max(-half_width_at(hall, back_m), band.left_m);
}
double right_at(const Hall& hall, const Band& band, double back_m) {
    return std::min(half_width_at(hall, back_m), band.right_m);
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

void keep_in_hall(Line& line, const Hall& hall) {
    for (glm::dvec3& point : line)
        point.z = std::clamp(point.z, 0.0, hall.length_m);
}

}  // namespace

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

Line straight_line(const Floor& floor, const Band& band, double back_m) {
    const double left = left_at(floor.in.hall, band, back_m);
    const double right = right_at(floor.in.hall, band, back_m);
    Line line;
    for (int i = 0; i <= floor.chords; ++i) {
        line.emplace_back(left + (right - left) * i / floor.chords, 0.0, back_m);
    }
    return line;
}

Line block_line(const Floor& floor, const FloorBlock& block, double back_m) {
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
    keep_in_hall(line, floor.in.hall);
    return line;
}

void set_height(Line& line, double up_m) {
    for (glm::dvec3& point : line)
        point.y = up_m;
}

void add_strip(const Line& front, const Line& back, StripKind kind, std::vector<Platform>& out) {
    constexpr double kLeastDepth_m = 1e-6;
    for (std::size_t i = 1; i < front.size(); ++i) {
        const bool deep = back[i - 1].z - front[i - 1].z > kLeastDepth_m ||
                          back[i].z - front[i].z > kLeastDepth_m;
        if (deep)
            out.push_back(
                {kind.kind, {front[i - 1], back[i - 1], back[i], front[i]}, kind.row, kind.block});
    }
}

}  // namespace rakeline::room
