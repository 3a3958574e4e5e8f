// SPDX-License-Identifier: MIT
#include "desk/camera_moves.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {

void orbit(view::Camera& camera, glm::dvec2 drag) {
    constexpr double kRadPerPixel = 0.006;
    camera.yaw_rad += drag.x * kRadPerPixel;
    camera.pitch_rad = std::clamp(camera.pitch_rad + drag.y * kRadPerPixel, -0.15, 1.54);
}

void pan(view::Camera& camera, glm::dvec2 drag, double height) {
    const double metres =
        2.0 * camera.distance_m * std::tan(camera.field_rad / 2.0) / std::max(height, 1.0);
    const glm::dmat4 m = camera.camera_from_room();
    const glm::dvec3 right{m[0][0], m[1][0], m[2][0]};
    const glm::dvec3 up{m[0][1], m[1][1], m[2][1]};
    camera.target += (up * drag.y - right * drag.x) * metres;
}

void zoom(view::Camera& camera, double steps) {
    camera.distance_m = std::clamp(camera.distance_m * std::pow(0.88, steps), 1.0, 200.0);
}

}  // namespace rakeline::desk
