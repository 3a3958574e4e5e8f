// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_map.hpp"

#include <optional>
#include <vector>

/// The beam as a solid: the pyramid over the gate's four edges, from the lens to the picture.
/// Private to picture/.
namespace rakeline::picture {

using SpacePolygon = std::vector<glm::dvec3>;

/// normal . p + offset >= 0.
struct HalfSpace {
    glm::dvec3 normal{0.0};
    double offset = 0.0;

    double at(const glm::dvec3& p) const { return glm::dot(normal, p) + offset; }
};

/// Cuts away what lies outside (Sutherland and Hodgman, 1974).
void keep_inside(SpacePolygon& polygon, const HalfSpace& side);

/// One side of the beam that is not upright.
struct BeamFace {
    HalfSpace inside;             ///< toward the beam's middle
    std::vector<HalfSpace> plan;  ///< upright walls over the face's outline

    /// How far p has to rise to meet the face's plane (fall, if negative).
    double rise(const glm::dvec3& p) const { return -inside.at(p) / inside.normal.y; }
};

/// An upright side is left out: its neighbours share its two outer rays. On a curved surface the
/// far end of a face is a polyline of the picture's rim.
struct BeamSolid {
    std::vector<BeamFace> lower;  ///< the beam lies over these
    std::vector<BeamFace> upper;  ///< and under these
};

/// Nothing if the rim misses the surface.
std::optional<BeamSolid> beam_solid(const PictureMap& map, glm::dvec2 gate_size_m);

/// The part of a polygon that lies in plan under or over one face.
SpacePolygon plan_overlap(const BeamFace& face, SpacePolygon polygon);

}  // namespace rakeline::picture
