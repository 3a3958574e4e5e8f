// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "room/acoustics.hpp"
#include "room/hall_surfaces.hpp"

#include <array>
#include <optional>

/// The hall as sound paths see it: a prism of flat walls that open or close toward the booth, its
/// ceiling level, its floor at the datum.
namespace rakeline::sound {

/// What the sound subject reads of the hall.
struct HallInput {
    double width_m = 12.0;  ///< at the screen wall
    double length_m = 20.0;
    double height_m = 6.5;
    double splay_rad = 0.0;
    std::optional<room::LevelFloor> level_floor;  ///< the largest without seats
    room::HallSurfaces surfaces;
    room::Acoustics acoustics;
    bool operator==(const HallInput&) const = default;
};

enum class Wall { left, right, rear, ceiling, screen };
inline constexpr std::size_t kWallCount = 5;

/// "left wall", "ceiling": as in a sentence.
const char* wall_name(Wall wall);

/// Points p of a plane have dot(inward, p) = offset_m; inside the hall the dot product is greater.
struct WallPlane {
    glm::dvec3 inward{0.0, 0.0, 1.0};  ///< unit
    double offset_m = 0.0;

    double before_m(const glm::dvec3& p) const { return glm::dot(inward, p) - offset_m; }
    /// The mirror image of a point.
    glm::dvec3 image(const glm::dvec3& p) const { return p - 2.0 * before_m(p) * inward; }
};

/// The planes of all walls, by Wall.
using WallPlanes = std::array<WallPlane, kWallCount>;
WallPlanes wall_planes(const HallInput& hall);

/// Share of the sound's energy that each wall sends back in the octave band of `band`, an index in
/// room::kAbsorptionOctaves_hz; by Wall.
std::array<double, kWallCount> wall_returns(const room::Acoustics& acoustics, std::size_t band);

}  // namespace rakeline::sound
