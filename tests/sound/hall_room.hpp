// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "sound/hall_sound.hpp"

#include <cmath>
#include <random>

/// Halls for tests of what a room does to sound.
namespace rakeline::tests {

inline double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

inline room::OctaveAbsorption alike(double absorption) {
    room::OctaveAbsorption out;
    out.by_octave.fill(absorption);
    return out;
}

/// Every surface takes the same share.
inline room::Acoustics evenly(double absorption) {
    room::Acoustics out;
    for (auto* surface : {&out.screen_wall, &out.side_walls, &out.rear_wall, &out.ceiling,
                          &out.floor, &out.seats, &out.audience})
        *surface = alike(absorption);
    return out;
}

/// An empty hall of these sides with no seats.
inline sound::HallInput box_hall(double width_m, double height_m, double length_m) {
    sound::HallInput in;
    in.width_m = width_m;
    in.height_m = height_m;
    in.length_m = length_m;
    in.level_floor = room::LevelFloor{0.0, width_m * length_m};
    in.surfaces = {.volume_m3 = width_m * height_m * length_m,
                   .screen_wall_m2 = width_m * height_m,
                   .side_walls_m2 = 2.0 * length_m * height_m,
                   .rear_wall_m2 = width_m * height_m,
                   .ceiling_m2 = width_m * length_m,
                   .bare_floor_m2 = width_m * length_m,
                   .seated_floor_m2 = 0.0};
    return in;
}

inline sound::HallInput random_hall(std::mt19937& random) {
    sound::HallInput in = box_hall(between(random, 6.0, 24.0), between(random, 3.0, 12.0),
                                   between(random, 8.0, 35.0));
    in.splay_rad = base::radians(between(random, -3.0, 8.0));
    in.surfaces.seated_floor_m2 = between(random, 0.2, 0.9) * in.surfaces.bare_floor_m2;
    in.surfaces.bare_floor_m2 -= in.surfaces.seated_floor_m2;
    for (auto* surface :
         {&in.acoustics.screen_wall, &in.acoustics.side_walls, &in.acoustics.rear_wall,
          &in.acoustics.ceiling, &in.acoustics.floor, &in.acoustics.seats, &in.acoustics.audience})
        for (double& a : surface->by_octave)
            a = between(random, 0.01, 0.95);
    in.acoustics.taken_fraction = between(random, 0.0, 1.0);
    return in;
}

/// A point well inside the hall.
inline glm::dvec3 point_in(std::mt19937& random, const sound::HallInput& hall) {
    const double back = between(random, 0.5, hall.length_m - 0.5);
    const double half = 0.5 * hall.width_m + back * std::tan(hall.splay_rad) - 0.3;
    return {between(random, -half, half), between(random, 0.3, hall.height_m - 0.3), back};
}

}  // namespace rakeline::tests
