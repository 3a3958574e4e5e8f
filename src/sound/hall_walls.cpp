// SPDX-License-Identifier: MIT
#include "sound/hall_walls.hpp"

#include "base/assert.hpp"

#include <cmath>

namespace rakeline::sound {

const char* wall_name(Wall wall) {
    switch (wall) {
        case Wall::left:
            return "left wall";
        case Wall::right:
            return "right wall";
        case Wall::rear:
            return "rear wall";
        case Wall::ceiling:
            return "ceiling";
        case Wall::screen:
            return "screen wall";
    }
    RL_ASSERT(false);
    return "";
}

WallPlanes wall_planes(const HallInput& hall) {
    const double c = std::cos(hall.splay_rad);
    const double s = std::sin(hall.splay_rad);
    // A side wall passes half the width at the screen wall and leans by the splay.
    const double side_m = -0.5 * hall.width_m * c;
    return {{{{c, 0.0, s}, side_m},
             {{-c, 0.0, s}, side_m},
             {{0.0, 0.0, -1.0}, -hall.length_m},
             {{0.0, -1.0, 0.0}, -hall.height_m},
             {{0.0, 0.0, 1.0}, 0.0}}};
}

std::array<double, kWallCount> wall_returns(const room::Acoustics& acoustics, std::size_t band) {
    const double sides = 1.0 - acoustics.side_walls.by_octave.at(band);
    return {sides, sides, 1.0 - acoustics.rear_wall.by_octave.at(band),
            1.0 - acoustics.ceiling.by_octave.at(band),
            1.0 - acoustics.screen_wall.by_octave.at(band)};
}

}  // namespace rakeline::sound
