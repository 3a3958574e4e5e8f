// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "sight/hidden.hpp"

#include <glm/vec3.hpp>

#include <cmath>
#include <random>
#include <vector>

/// Rooms full of people, by a few numbers.
namespace rakeline::tests {

struct SeatedRoom {
    geometry::Patch surface;
    picture::Opening opening;
    std::vector<glm::dvec3> eyes;
    std::vector<sight::Head> heads;
    std::vector<sight::Wall> walls;

    sight::HiddenInput input() const { return {surface, opening, eyes, heads, walls}; }
};

struct RoomShape {
    int rows = 20;
    int seats = 25;  ///< in a row
    double pitch_m = 0.56;
    double spacing_m = 1.0;
    double first_back_m = 5.0;  ///< from the screen to the first row, on the centre line
    double rake_rad = 0.0;
    double row_radius_m = 0.0;  ///< of the first row, about a point toward the screen; 0: straight
    bool staggered = true;
    double height_spread_m = 0.04;  ///< eyes up to this above or below the mean
    double screen_width_m = 14.0;
    double screen_height_m = 14.0 / 2.39;
    double sill_m = 0.9;
    double screen_radius_m = 0.0;
    double tilt_rad = 0.0;
    double head_radius_m = 0.0775;
    double half_height_m = 0.114;
    bool seat_backs = false;
};

/// The same on every machine, unlike the distributions of <random>.
inline double drawn(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

inline void set_screen(const RoomShape& shape, SeatedRoom& room) {
    const double middle = shape.sill_m + 0.5 * shape.screen_height_m;
    room.surface =
        geometry::standing_patch({0.0, middle, 0.0}, shape.screen_radius_m, shape.tilt_rad);
    const double half = geometry::half_arc_of_chord(room.surface, shape.screen_width_m).value();
    const double up = 0.5 * shape.screen_height_m;
    room.opening.uv = {-half, half, -up, up};
    room.opening.width_m = shape.screen_width_m;
    room.opening.height_m = shape.screen_height_m;
    room.opening.area_m2 = room.opening.uv.area();
}

inline void add_person(const RoomShape& shape,
                       const glm::dvec3& eye,
                       const glm::dvec3& rightward,
                       SeatedRoom& room) {
    const int index = static_cast<int>(room.eyes.size());
    room.eyes.push_back(eye);
    room.heads.push_back({eye, shape.head_radius_m, shape.half_height_m, index});
    if (!shape.seat_backs) return;
    const glm::dvec3 middle = eye - glm::dvec3(0.0, 0.2, 0.0);
    const glm::dvec3 half = 0.45 * shape.pitch_m * rightward;
    room.walls.push_back(
        {middle - half, middle + half, sight::WallHides::below, eye.y - 1.2, index});
}

inline SeatedRoom seated_room(const RoomShape& shape, unsigned seed) {
    std::mt19937 random(seed);
    SeatedRoom room;
    set_screen(shape, room);
    for (int row = 0; row < shape.rows; ++row) {
        const double back = shape.first_back_m + row * shape.spacing_m;
        const double shift = shape.staggered && row % 2 == 1 ? 0.5 : 0.0;
        const double radius =
            shape.row_radius_m == 0.0 ? 0.0 : shape.row_radius_m + row * shape.spacing_m;
        for (int i = 0; i < shape.seats; ++i) {
            const double along = (i - 0.5 * (shape.seats - 1) + shift) * shape.pitch_m;
            const double up = 1.2 + row * shape.spacing_m * std::tan(shape.rake_rad) +
                              drawn(random, -shape.height_spread_m, shape.height_spread_m);
            const double angle = radius == 0.0 ? 0.0 : along / radius;
            const double x = radius == 0.0 ? along : radius * std::sin(angle);
            const double fall = 2.0 * radius * std::pow(std::sin(0.5 * angle), 2);
            add_person(shape, {x, up, back - fall}, {std::cos(angle), 0.0, -std::sin(angle)}, room);
        }
    }
    return room;
}

/// Rooms of all kinds, low rakes among them; each could be built.
inline RoomShape random_shape(unsigned seed) {
    std::mt19937 random(seed);
    RoomShape s;
    s.rows = 2 + static_cast<int>(random() % 9);
    s.seats = 3 + static_cast<int>(random() % 16);
    s.pitch_m = drawn(random, 0.50, 0.65);
    s.spacing_m = drawn(random, 0.80, 1.25);
    s.first_back_m = drawn(random, 3.0, 8.0);
    s.rake_rad = base::radians(random() % 2 ? drawn(random, 0.0, 4.0) : drawn(random, 4.0, 25.0));
    s.row_radius_m = random() % 2 ? 0.0 : drawn(random, 9.0, 30.0);
    s.staggered = random() % 2 == 0;
    s.screen_width_m = drawn(random, 5.0, 16.0);
    s.screen_height_m = s.screen_width_m / drawn(random, 1.33, 2.5);
    s.sill_m = drawn(random, 0.4, 1.8);
    s.screen_radius_m = random() % 2 ? 0.0 : s.screen_width_m * drawn(random, 0.8, 3.0);
    s.tilt_rad = random() % 2 ? 0.0 : base::radians(drawn(random, -3.0, 9.0));
    s.head_radius_m = drawn(random, 0.068, 0.085);
    s.half_height_m = drawn(random, 0.096, 0.129);
    s.seat_backs = random() % 3 == 0;
    return s;
}

}  // namespace rakeline::tests
