// SPDX-License-Identifier: MIT
#include "room/hall_surfaces.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace rakeline::room {
namespace {

/// Points this near a wall are on it, m: arcs end there to rounding.
constexpr double kOnWall_m = 1e-3;

/// What the floors of one level add up to.
struct Level {
    double plan_m2 = 0.0;
    double area_m2 = 0.0;       ///< along the slope
    double under_m3 = 0.0;      ///< between floor and datum, negative where it lies below
    double at_screen_m2 = 0.0;  ///< of each wall: between the floor along it and the datum
    double at_sides_m2 = 0.0;
    double at_rear_m2 = 0.0;
};

/// Half of a triangle.
void add_half(const glm::dvec3& a, const glm::dvec3& b, const glm::dvec3& c, Level& out) {
    const glm::dvec3 twice = glm::cross(b - a, c - a);
    const double half_plan_m2 = 0.25 * std::abs(twice.y);
    out.plan_m2 += half_plan_m2;
    out.area_m2 += 0.25 * glm::length(twice);
    out.under_m3 += half_plan_m2 * (a.y + b.y + c.y) / 3.0;
}

/// Four corners of a slope along arcs need not lie in a plane: the mean of what it is when folded
/// along the one diagonal and along the other, so that a mirrored hall has the mirrored floor.
void add_quadrilateral(const std::array<glm::dvec3, 4>& c, Level& out) {
    add_half(c[0], c[1], c[2], out);
    add_half(c[0], c[2], c[3], out);
    add_half(c[1], c[2], c[3], out);
    add_half(c[1], c[3], c[0], out);
}

bool on_side(const Hall& hall, const glm::dvec3& p) {
    return std::abs(std::abs(p.x) - half_width_at(hall, p.z)) < kOnWall_m;
}

/// The strip of wall under an edge of floor that runs along a wall.
void add_edge(const Hall& hall, const glm::dvec3& a, const glm::dvec3& b, Level& out) {
    const double height = 0.5 * (a.y + b.y);
    const auto both_at = [&](double back_m) {
        return std::abs(a.z - back_m) < kOnWall_m && std::abs(b.z - back_m) < kOnWall_m;
    };
    if (both_at(0.0)) out.at_screen_m2 += height * std::abs(b.x - a.x);
    if (both_at(hall.length_m)) out.at_rear_m2 += height * std::abs(b.x - a.x);
    if (on_side(hall, a) && on_side(hall, b) && a.x * b.x > 0.0)
        out.at_sides_m2 += height * std::hypot(b.x - a.x, b.z - a.z);
}

void add_platform(const Hall& hall, const Platform& platform, Level& out) {
    const auto& c = platform.corners;
    add_quadrilateral(c, out);
    for (std::size_t i = 0; i < c.size(); ++i)
        add_edge(hall, c[i], c[(i + 1) % c.size()], out);
}

bool is_raised(const Platform& platform, const std::vector<SeatBlock>& seating) {
    return platform.block && seating.at(static_cast<std::size_t>(*platform.block)).raised;
}

Level level_of(const Hall& hall,
               const SeatPlan& plan,
               const std::vector<SeatBlock>& seating,
               bool raised) {
    Level out;
    for (const Platform& platform : plan.platforms) {
        const bool front = platform.kind == PlatformKind::balcony_front;
        if (!front && is_raised(platform, seating) == raised) add_platform(hall, platform, out);
    }
    return out;
}

}  // namespace

std::optional<LevelFloor> largest_level_floor(const SeatPlan& plan,
                                              const std::vector<SeatBlock>& seating) {
    std::map<double, double> area_at;  // by height
    for (const Platform& p : plan.platforms) {
        const bool bare = p.kind == PlatformKind::front || p.kind == PlatformKind::back ||
                          p.kind == PlatformKind::cross_aisle;
        const double up_m = p.corners[0].y;
        const bool level = std::all_of(p.corners.begin(), p.corners.end(),
                                       [&](const glm::dvec3& c) { return c.y == up_m; });
        if (!bare || !level || is_raised(p, seating)) continue;
        Level one;
        add_quadrilateral(p.corners, one);
        area_at[up_m] += one.plan_m2;
    }
    const auto largest = std::max_element(area_at.begin(), area_at.end(),
                                          [](auto& a, auto& b) { return a.second < b.second; });
    if (largest == area_at.end()) return std::nullopt;
    return LevelFloor{largest->first, largest->second};
}

double seated_m2(const std::vector<SeatBlock>& seating, const SeatPlan& plan, bool raised) {
    double sum = 0.0;
    for (const Row& row : plan.rows) {
        const SeatBlock& block = seating.at(static_cast<std::size_t>(row.block));
        if (block.raised == raised)
            sum += row.seat_count * block.seat_pitch_m * block.row_spacing_m;
    }
    return sum;
}

HallSurfaces hall_surfaces(const Hall& hall,
                           const SeatPlan& plan,
                           const std::vector<SeatBlock>& seating) {
    const double front_m = 2.0 * half_width_at(hall, 0.0);
    const double rear_m = 2.0 * half_width_at(hall, hall.length_m);
    const double plan_m2 = 0.5 * (front_m + rear_m) * hall.length_m;
    const Level floor = level_of(hall, plan, seating, false);
    const Level balcony = level_of(hall, plan, seating, true);
    const double floor_m2 = floor.area_m2 + std::max(0.0, plan_m2 - floor.plan_m2);
    const double seated = std::min(floor_m2, seated_m2(seating, plan, false));
    const double seated_above = std::min(balcony.area_m2, seated_m2(seating, plan, true));
    const double side_m = hall.length_m / std::cos(hall.splay_rad);
    const auto left = [](double whole_m2, double under_m2) {
        return std::max(0.0, whole_m2 - under_m2);
    };
    return {.volume_m3 = left(plan_m2 * hall.height_m, floor.under_m3),
            .screen_wall_m2 = left(front_m * hall.height_m, floor.at_screen_m2),
            .side_walls_m2 = left(2.0 * side_m * hall.height_m, floor.at_sides_m2),
            .rear_wall_m2 = left(rear_m * hall.height_m, floor.at_rear_m2),
            .ceiling_m2 = plan_m2 + balcony.area_m2,
            .bare_floor_m2 = floor_m2 - seated + balcony.area_m2 - seated_above,
            .seated_floor_m2 = seated + seated_above};
}

}  // namespace rakeline::room
