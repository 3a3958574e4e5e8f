// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "sight/hidden.hpp"

#include <glm/vec3.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <vector>

/// Rooms full of people, by a few numbers.
namespace rakeline::tests {

/// A level slab over the rear half of the stalls, with a wall along its front.
struct Balcony {
    double front_m = 0.0;  ///< of slab and wall, from the screen
    double under_m = 0.0, floor_m = 0.0, wall_top_m = 0.0;
};

struct SeatedRoom {
    geometry::Patch surface;
    picture::Opening opening;
    std::vector<glm::dvec3> eyes;
    std::vector<sight::Head> heads;
    std::vector<sight::Wall> walls;  ///< of seats, in their order, and then of the balcony
    std::optional<Balcony> balcony;

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
    bool balcony = false;  ///< with as many rows as there are beneath it; wants straight rows
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

/// Rows from `first` on, `lift_m` over where they are in the stalls.
inline void add_rows(
    const RoomShape& shape, int first, double lift_m, std::mt19937& random, SeatedRoom& room) {
    for (int row = first; row < shape.rows; ++row) {
        const double back = shape.first_back_m + row * shape.spacing_m;
        const double shift = shape.staggered && row % 2 == 1 ? 0.5 : 0.0;
        const double radius =
            shape.row_radius_m == 0.0 ? 0.0 : shape.row_radius_m + row * shape.spacing_m;
        for (int i = 0; i < shape.seats; ++i) {
            const double along = (i - 0.5 * (shape.seats - 1) + shift) * shape.pitch_m;
            const double up = lift_m + 1.2 + row * shape.spacing_m * std::tan(shape.rake_rad) +
                              drawn(random, -shape.height_spread_m, shape.height_spread_m);
            const double angle = radius == 0.0 ? 0.0 : along / radius;
            const double x = radius == 0.0 ? along : radius * std::sin(angle);
            const double fall = 2.0 * radius * std::pow(std::sin(0.5 * angle), 2);
            add_person(shape, {x, up, back - fall}, {std::cos(angle), 0.0, -std::sin(angle)}, room);
        }
    }
}

inline void add_balcony(const RoomShape& shape, std::mt19937& random, SeatedRoom& room) {
    constexpr double kOver_m = 2.9;
    constexpr double kHalf_m = 40.0;  // wider than all
    const int first = shape.rows / 2;
    const double floor_m = kOver_m + first * shape.spacing_m * std::tan(shape.rake_rad);
    const double front_m = shape.first_back_m + first * shape.spacing_m - 0.6;
    room.balcony = Balcony{front_m, floor_m - 0.3, floor_m, floor_m + 0.75};
    add_rows(shape, first, kOver_m, random, room);
    const auto edge = [&](double up_m, sight::WallHides hides) {
        room.walls.push_back(
            {{-kHalf_m, up_m, front_m}, {kHalf_m, up_m, front_m}, hides, floor_m, -1});
    };
    edge(room.balcony->wall_top_m, sight::WallHides::below);
    edge(room.balcony->under_m, sight::WallHides::above);
}

inline SeatedRoom seated_room(const RoomShape& shape, unsigned seed) {
    std::mt19937 random(seed);
    SeatedRoom room;
    set_screen(shape, room);
    add_rows(shape, 0, 0.0, random, room);
    if (shape.balcony) add_balcony(shape, random, room);
    return room;
}

/// Rooms of all kinds, low rakes, curved screens and balconies among them; each could be built.
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
    if (random() % 5 == 0) {
        s.balcony = true;
        s.row_radius_m = 0.0;
        s.rake_rad = std::min(s.rake_rad, base::radians(4.0));
    }
    return s;
}

}  // namespace rakeline::tests
