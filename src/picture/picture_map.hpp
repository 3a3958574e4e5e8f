// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"

#include <glm/mat3x3.hpp>

#include <optional>

/// The exact map between gate and screen, from which keystone, bows, crop, plate and light come.
///
/// Gate coordinates (x, y), metres, are those of the picture: x to the picture's right, y to its
/// top as seen from the seats, origin at the centre of the aperture or imager part in use. (The
/// picture stands in the physical gate turned by half a turn; only plate drawings need to know.)
namespace rakeline::picture {

/// A projector's lens and gate, posed in the room.
struct Pose {
    glm::dvec3 lens{0.0};             ///< principal point
    glm::dvec3 axis{0.0, 0.0, -1.0};  ///< unit, toward the screen
    glm::dvec3 right{1.0, 0.0, 0.0};  ///< unit, toward the picture's right
    glm::dvec3 up{0.0, 1.0, 0.0};     ///< unit, toward the picture's top
    double focal_length_m = 0.05;
    double image_distance_m = 0.0501;  ///< b = f D / (D - f): lens to gate, focused at throw D
    double squeeze = 1.0;
    glm::dvec2 shift_m{0.0};  ///< of the picture, in gate metres
};

class PictureMap {
public:
    PictureMap() = default;
    PictureMap(const geometry::Patch& surface, const Pose& pose) : surface_(surface), pose_(pose) {}

    const Pose& pose() const { return pose_; }
    const geometry::Patch& surface() const { return surface_; }

    /// The ray that leaves the lens for a gate point (direction not of unit length).
    geometry::Ray ray(glm::dvec2 gate_m) const;

    /// Where the ray meets the surface from the seat side; nothing if it does not.
    std::optional<glm::dvec2> screen_from_gate(glm::dvec2 gate_m) const;

    /// The gate point that lights a surface point; nothing if the point lies behind the lens or
    /// shows the projector its back.
    std::optional<glm::dvec2> gate_from_screen(glm::dvec2 uv) const;

    /// Area on the surface per area in the gate at a gate point (the Jacobian, analytic); nothing
    /// where screen_from_gate has nothing.
    std::optional<double> area_ratio(glm::dvec2 gate_m) const;

    /// Closed form for a plane: (u, v, 1) ~ H (x, y, 1). Nothing for a cylinder.
    std::optional<glm::dmat3> homography() const;

private:
    geometry::Patch surface_;
    Pose pose_;
};

/// Axes of a projector turned by yaw (toward +x), pitch (downward) and roll (clockwise as seen from
/// the seats), in that order, from looking straight at the screen wall.
Pose aimed_pose(const glm::dvec3& lens, double yaw_rad, double pitch_rad, double roll_rad);

}  // namespace rakeline::picture
