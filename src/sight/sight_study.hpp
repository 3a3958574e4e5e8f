// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"

#include <optional>
#include <vector>

/// What every seat's eye has of the picture: true angles, and clearance over the rows in front.
namespace rakeline::sight {

struct SightInput {
    geometry::Patch surface;
    std::vector<picture::Opening> openings;  ///< per format
    room::SeatPlan seats;
    std::vector<room::SeatBlock> blocks;  ///< for stagger
};

/// Angles in rad at one eye for one opening.
struct ViewingAngles {
    double subtended_width = 0.0;   ///< true angle between the side edges' mid-points
    double subtended_height = 0.0;  ///< between the mid-points of bottom and top edge
    double elevation_top = 0.0;     ///< eye to the top edge's mid-point, from horizontal
    double elevation_centre = 0.0;
    double off_axis = 0.0;      ///< eye-centre line from the surface normal there, in plan
    double off_axis_far = 0.0;  ///< eye to the farther side edge against that same normal, in plan
    double distance_m = 0.0;    ///< eye to picture centre
    double distance_widths = 0.0;
    double distance_heights = 0.0;
};
ViewingAngles viewing_angles(const geometry::Patch& surface,
                             const picture::Opening& opening,
                             const glm::dvec3& eye);

/// C-value: what the sight line to the point of focus clears over the eye in front.
///
///     C = D (N + R) / (D + T) - R      [m]
///       D  horizontal distance, front eye to point of focus     T  tread between the two eyes
///       R  height of the front eye over the point of focus      N  rear eye over front eye
///
/// Source: EN 13200-1 form (University of Bath sight-line worksheet); cinemas are outside that
/// standard's scope, the formula is borrowed. Example: D 30, R 10, T 1, N 0.48833 -> 0.150.
double c_value(double distance_m, double front_eye_height_m, double tread_m, double riser_m);

/// The riser that gives C: N = (R + C)(D + T)/D - R.
double riser_for_c(double distance_m, double front_eye_height_m, double tread_m, double c_m);

struct RowClearance {
    std::optional<double> c_m;         ///< over the row in front; nothing in a first row
    std::optional<double> c_second_m;  ///< over the second row in front, staggered blocks only
    glm::dvec3 focus{0.0};             ///< nearest point of the picture's lower edge
};

struct FormatSight {
    std::vector<ViewingAngles> seats;
    std::vector<RowClearance> rows;  ///< along each row's own centre line
};

struct SightStudy {
    std::vector<FormatSight> formats;
};

SightStudy study_sight(const SightInput& in);

}  // namespace rakeline::sight
