// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_map.hpp"
#include "room/seat_plan.hpp"

#include <optional>
#include <span>

/// The beam in the hall: how high it passes over the floors, and where it leaves the booth.
namespace rakeline::picture {

struct BeamClearance {
    double height_m = 0.0;        ///< least height of the beam over any floor below it
    glm::dvec3 floor_point{0.0};  ///< where
    std::optional<int> block;     ///< of that floor, as in room::Platform
};

struct BeamInput {
    const PictureMap& map;
    glm::dvec2 gate_size_m{0.0};
    double booth_wall_back_m = 0.0;
};

/// Least vertical distance from a floor up to the lower side of the beam, over all platforms, from
/// the picture surface to the booth wall. Where a platform stands above the whole beam (a balcony
/// that the beam passes under) it does not count; one that cuts into the beam gives a negative
/// height. Nothing if the beam passes over no platform, or if its rim misses the surface.
///
/// Exact: the beam is the pyramid of the gate's four edges, and both its faces and the platforms
/// (as two triangles each) are plane, so the least height lies at a corner of what they share in
/// plan. On a curved surface the far end of a face is taken as a polyline of the rim.
std::optional<BeamClearance> beam_clearance(const BeamInput& beam,
                                            std::span<const room::Platform> platforms);

/// Where the lens axis passes the booth wall on its way to the surface `throw_m` away; nothing if
/// the lens stands in the hall.
std::optional<glm::dvec3> port_point(const Pose& pose, double throw_m, double booth_wall_back_m);

}  // namespace rakeline::picture
