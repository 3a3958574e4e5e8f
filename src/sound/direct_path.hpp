// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/patch.hpp"
#include "room/layout.hpp"
#include "sound/directivity.hpp"

/// The straight way from a loudspeaker to an ear.
namespace rakeline::sound {

/// What one path takes, so that the derivation can show it.
struct DirectPath {
    double distance_m = 0.0;
    double off_axis_across_rad = 0.0;  ///< see directivity.hpp
    double off_axis_up_rad = 0.0;
    double sheet_angle_rad = 0.0;  ///< at the screen, from its normal, 0 to pi/2; 0 where none
    double cos_sheet = 1.0;        ///< of that angle, >= 0
    OffAxis off_axis;              ///< both angles together, as the directivity takes them
    bool through_sheet = false;    ///< the path crosses the screen
    bool operator==(const DirectPath&) const = default;
};

/// A loudspeaker's own axes in the room frame: unit, right-handed, `forward` along its axis.
struct LoudspeakerAxes {
    glm::dvec3 across{1.0, 0.0, 0.0};
    glm::dvec3 up{0.0, 1.0, 0.0};
    glm::dvec3 forward{0.0, 0.0, 1.0};
};

/// Yaw turns the axis toward +x, pitch then turns it downward; 0, 0 faces the booth.
LoudspeakerAxes axes_of(const room::Loudspeaker& loudspeaker);

/// The sheet counts for loudspeakers that say that they stand behind the screen, and only where the
/// path really crosses it. It is taken as going on beyond the frame: a path just past the picture's
/// side meets masking and sheet alike.
DirectPath direct_path(const room::Loudspeaker& loudspeaker,
                       const geometry::Patch& surface,
                       const glm::dvec3& ear);

}  // namespace rakeline::sound
