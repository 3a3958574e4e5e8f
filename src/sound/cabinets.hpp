// SPDX-License-Identifier: MIT
#pragma once

#include "sound/direct_path.hpp"

#include <array>
#include <optional>
#include <vector>

/// The boxes that loudspeakers are, and how much room they have.
namespace rakeline::sound {

struct SoundInput;

/// A box whose front's middle stands at the acoustic centre, square to the axis.
struct Cabinet {
    glm::dvec3 front{0.0};  ///< middle of its front
    LoudspeakerAxes axes;
    double width_m = 0.0;
    double height_m = 0.0;
    double depth_m = 0.0;

    /// A point by shares of the cabinet: across and up -1 to +1, back 0 (front) to 1.
    glm::dvec3 at(double across, double up, double back) const;
    /// Front left low, front right low, front left high, front right high, then the same at the
    /// back; left and right as of the loudspeaker's own frame, -x and +x.
    std::array<glm::dvec3, 8> corners() const;
};
Cabinet cabinet_of(const room::Loudspeaker& loudspeaker);

/// The widest gap between two parallel planes that part two boxes, over the directions square to
/// their faces and to pairs of their edges, m: the distance where faces look at each other, at most
/// the distance elsewhere; negative exactly where they reach into each other. Source: separating
/// axes of two boxes, the usual theorem.
double gap_between(const Cabinet& a, const Cabinet& b);

/// How far a point stands behind the sheet, square to it, m; negative on the seats' side. The sheet
/// is taken as going on beyond its frame.
double behind_sheet_m(const geometry::Patch& surface, const glm::dvec3& point);

/// All in m; negative where there is too little room by that much.
struct CabinetRoom {
    /// Nearest point of its front to the sheet, and of its back to the screen wall; of those behind
    /// the screen.
    std::optional<double> to_sheet_m;
    std::optional<double> to_wall_m;
    /// Least of its top under the frame's upper edge and its foot over the lower; of screen
    /// channels behind the screen.
    std::optional<double> inside_picture_m;
    /// Height of the acoustic centre within the frame, 0 at its lower edge, 1 at its upper; of
    /// screen channels behind the screen.
    std::optional<double> height_fraction;
    std::optional<double> apart_m;  ///< gap_between the nearest other cabinet
    /// Its lowest corner over a standing person at the seat nearest in plan; of surrounds.
    std::optional<double> over_heads_m;
    bool operator==(const CabinetRoom&) const = default;
};

/// Per loudspeaker.
std::vector<CabinetRoom> study_cabinets(const SoundInput& in);

}  // namespace rakeline::sound
