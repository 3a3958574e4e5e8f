// SPDX-License-Identifier: MIT
#pragma once

#include "picture/beam.hpp"

#include <vector>

/// What else of the hall the beam comes near: balconies, ceiling, side walls.
namespace rakeline::picture {

/// The hall as the beam meets it.
struct HallShell {
    double width_m = 12.0;  ///< between the side walls at the screen wall
    double height_m = 6.5;  ///< floor datum to ceiling
    double splay_rad = 0.0;
    bool operator==(const HallShell&) const = default;
};

/// A raised block of seats. All parts lie on it, quadrilaterals.
struct Balcony {
    std::vector<room::Platform> fronts;  ///< tops of its solid front; empty: it has none
    std::vector<room::Platform> floors;  ///< treads, aisles and what lies behind them
    double front_wall_m = 0.0;           ///< height of the solid front over its foot
    bool operator==(const Balcony&) const = default;
};

/// Where the beam comes nearest to a part of the hall.
struct BeamGap {
    double distance_m = 0.0;     ///< negative: the part reaches that far into the beam
    glm::dvec3 part_point{0.0};  ///< on the ceiling, wall or balcony
    glm::dvec3 beam_point{0.0};  ///< on the beam's side
    bool beam_over = true;       ///< of a balcony: the beam passes over it, not under it
};

struct BeamGaps {
    std::optional<BeamGap> balcony;  ///< nothing where no balcony lies in the beam's way in plan
    std::optional<BeamGap> ceiling;  ///< nothing where the hall is not given
    std::optional<BeamGap> wall;
};

/// Gaps of one picture's beam, between the picture surface and the booth wall, the beam taken from
/// the middle of the lens.
///
/// Balcony: upright distance. Over it, from the top of its solid front (from its floor where it has
/// none, or where the beam does not pass the front) up to the beam's lower side; under it, from the
/// beam's upper side up to the floor, or to the front's foot. Of the two the larger counts for a
/// balcony, since it is enough that the beam clears one way, and the least over all balconies. The
/// structure under a balcony's floor is not known and not taken off.
///
/// Ceiling: upright distance from the beam's highest point. Wall: square to the nearer side wall.
///
/// Exact as beam_clearance is: beam and parts are made of planes, so that a least distance lies at
/// a corner; a curved surface's rim is taken as the polyline `rim` (points on the surface).
BeamGaps beam_gaps(const BeamInput& beam,
                   std::span<const glm::dvec3> rim,
                   const std::optional<HallShell>& shell,
                   std::span<const Balcony> balconies);

}  // namespace rakeline::picture
