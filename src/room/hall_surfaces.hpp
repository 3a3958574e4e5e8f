// SPDX-License-Identifier: MIT
#pragma once

#include "room/seat_plan.hpp"

#include <optional>
#include <vector>

/// The hall's surfaces by area, and the air between them.
namespace rakeline::room {

/// Areas in m2 as sound meets them. Each level of seats is a floor of its own.
struct HallSurfaces {
    double volume_m3 = 0.0;  ///< between walls, floor and ceiling; what stands under the rake is
                             ///< off, a balcony's own slab is not
    double screen_wall_m2 = 0.0;
    double side_walls_m2 = 0.0;  ///< both
    double rear_wall_m2 = 0.0;
    double ceiling_m2 = 0.0;  ///< with the undersides of balconies
    double bare_floor_m2 = 0.0;
    double seated_floor_m2 = 0.0;  ///< what seats cover
    bool operator==(const HallSurfaces&) const = default;

    double total_m2() const {
        return screen_wall_m2 + side_walls_m2 + rear_wall_m2 + ceiling_m2 + bare_floor_m2 +
               seated_floor_m2;
    }
};

/// Of the seat plan's own floors: sloped ones count by their true area; walls end at the floor that
/// runs along them; where a floor of arcs leaves corners empty the floor lies at the datum there.
/// Steps' upright faces, balcony fronts, people and furniture are left out. Seats cover no more of
/// a level than there is of it. Source: derived, plane triangles.
HallSurfaces hall_surfaces(const Hall& hall,
                           const SeatPlan& plan,
                           const std::vector<SeatBlock>& seating);

/// Floor at one height that no seats cover.
struct LevelFloor {
    double up_m = 0.0;
    double area_m2 = 0.0;
    bool operator==(const LevelFloor&) const = default;
};

/// The largest of the level floors before, behind and between the rows, balconies left out; nothing
/// where all of it slopes.
std::optional<LevelFloor> largest_level_floor(const SeatPlan& plan,
                                              const std::vector<SeatBlock>& seating);

/// Floor that seats cover, on balconies or off them, m2: each its pitch by its block's row spacing.
double seated_m2(const std::vector<SeatBlock>& seating, const SeatPlan& plan, bool raised);

}  // namespace rakeline::room
