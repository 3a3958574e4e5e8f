// SPDX-License-Identifier: MIT
#pragma once

#include "sight/seated_room.hpp"

#include <string>
#include <vector>

/// The rooms that the hidden picture is timed in.
namespace rakeline::bench {

struct TimedRoom {
    std::string name;
    tests::RoomShape shape;
};

inline std::vector<TimedRoom> rooms_of(int rows, int seats) {
    tests::RoomShape level;
    level.rows = rows;
    level.seats = seats;
    tests::RoomShape curved = level;
    curved.rake_rad = base::radians(5.0);
    curved.row_radius_m = 15.0;
    tests::RoomShape steep = level;
    steep.rake_rad = base::radians(12.0);
    return {{"level", level}, {"5 deg, curved rows", curved}, {"12 deg", steep}};
}

}  // namespace rakeline::bench
