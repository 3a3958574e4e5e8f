// SPDX-License-Identifier: MIT
#pragma once

#include "view/scene.hpp"

/// How the hand moves the camera about the hall. Drags in pixels, right and down positive.
namespace rakeline::desk {

/// Turns about the target; the pitch stays between just above level and straight down.
void orbit(view::Camera& camera, glm::dvec2 drag);

/// Moves the target so that the point under the hand stays under it. `height`: of the view, pixels.
void pan(view::Camera& camera, glm::dvec2 drag, double height);

/// Comes nearer for steps > 0; from 1 m to 200 m of the target.
void zoom(view::Camera& camera, double steps);

}  // namespace rakeline::desk
