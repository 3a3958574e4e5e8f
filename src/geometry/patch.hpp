// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

#include <optional>
#include <vector>

/// A picture surface: a plane, or a cylinder concave toward `normal`, with coordinates on it.
///
/// Surface coordinates (u, v), metres along the surface from its centre: u to the right along the
/// arc as seen from the concave side (for a plane: straight across), v along the generator, upward.
/// Both unroll the surface without stretching, so areas in (u, v) are areas on the surface.
namespace rakeline::geometry {

struct Patch {
    glm::dvec3 centre{0.0};
    glm::dvec3 across{1.0, 0.0, 0.0};  ///< unit; right-handed with up and normal
    glm::dvec3 up{0.0, 1.0, 0.0};      ///< unit, along the generator
    glm::dvec3 normal{0.0, 0.0, 1.0};  ///< unit, at the centre, toward the seats
    double radius_m = 0.0;  ///< 0 for a plane; else the axis lies at centre + radius*normal

    bool flat() const { return radius_m == 0.0; }
};

/// Patch through `centre`, facing +z, leaning back (top away from the seats) by `tilt_rad`.
Patch standing_patch(const glm::dvec3& centre, double radius_m, double tilt_rad);

glm::dvec3 point_at(const Patch& patch, glm::dvec2 uv);
glm::dvec3 normal_at(const Patch& patch, glm::dvec2 uv);

/// Surface coordinates of a point that lies on the surface (others: of its foot along the normal).
glm::dvec2 coordinates_of(const Patch& patch, const glm::dvec3& point);

/// Half arc length of a chord of width `chord_m` that is centred on the patch; a plane's arc is its
/// chord. Nothing if the chord is longer than the cylinder is wide.
std::optional<double> half_arc_of_chord(const Patch& patch, double chord_m);

/// Chord between u = -half_arc_m and u = +half_arc_m.
double chord_of_half_arc(const Patch& patch, double half_arc_m);

struct PatchHit {
    double t = 0.0;  ///< along the ray, in lengths of its direction; > 0
    glm::dvec2 uv{0.0};
    bool from_front = true;  ///< the ray arrives on the concave (seat) side
};

/// All places where the ray meets the surface in front of its origin, nearest first. The cylinder
/// counts as its half toward the screen wall (|u| <= pi r / 2): at most two hits, where a ray from
/// outside enters through the convex side and leaves through the concave one. A ray parallel to the
/// surface (or to the generator, off the surface) meets it nowhere.
std::vector<PatchHit> hits(const Patch& patch, const Ray& ray);

/// The hit that a light ray from the concave side makes: the first that arrives from the front.
std::optional<PatchHit> front_hit(const Patch& patch, const Ray& ray);

}  // namespace rakeline::geometry
