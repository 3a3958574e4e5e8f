// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "room/seat_plan.hpp"

#include <optional>
#include <vector>

/// What the sight line to the picture's lower edge clears over the eyes in front.
namespace rakeline::sight {

/// C-value: what the sight line to the point of focus clears over the eye in front.
///
///     C = D (N + R) / (D + T) - R      [m]
///       D  horizontal distance, front eye to point of focus     T  tread between the two eyes
///       R  height of the front eye over the point of focus      N  rear eye over front eye
///
/// D + T must not be 0. R is negative where the picture's lower edge is above the eye.
/// Source: EN 13200-1 form (University of Bath sight-line worksheet); cinemas are outside that
/// standard's scope, the formula is borrowed. Example: D 30, R 10, T 1, N 0.48833 -> 0.150.
double c_value(double distance_m, double front_eye_height_m, double tread_m, double riser_m);

/// The riser that gives C: N = (R + C)(D + T)/D - R. D must not be 0.
double riser_for_c(double distance_m, double front_eye_height_m, double tread_m, double c_m);

/// The point of the opening's lower edge that is nearest to the eye in plan: the foot of the
/// perpendicular where it falls on the edge, else the edge's nearer end. Of two points equally near
/// (an eye behind the middle of curvature of a curved screen) the one to the house left.
glm::dvec3 nearest_focus(const geometry::Patch& surface,
                         const picture::Opening& opening,
                         const glm::dvec3& eye);

/// What the C-value of one eye over another is made of, as in c_value.
struct ClearanceTerms {
    double distance_m = 0.0;          ///< D
    double front_eye_height_m = 0.0;  ///< R
    double tread_m = 0.0;             ///< T
    double riser_m = 0.0;             ///< N
};

/// The terms of `rear` over `front` toward `focus`: D and T are measured in plan along the line
/// from the rear eye to the focus, onto which the front eye is dropped. Nothing where the two are
/// not one behind the other on that line (the rear eye stands above the focus or in front).
std::optional<ClearanceTerms> clearance_terms(const glm::dvec3& rear,
                                              const glm::dvec3& front,
                                              const glm::dvec3& focus);

/// The C-value by those terms.
std::optional<double> clearance(const glm::dvec3& rear,
                                const glm::dvec3& front,
                                const glm::dvec3& focus);

struct RowClearance {
    std::optional<double> c_m;         ///< over the row in front; nothing in a first row
    std::optional<double> c_second_m;  ///< over the second row in front, staggered blocks only
    glm::dvec3 focus{0.0};             ///< nearest point of the picture's lower edge
    bool operator==(const RowClearance&) const = default;
};

/// For every row of the plan, from its eye on the block's centre line.
std::vector<RowClearance> row_clearances(const geometry::Patch& surface,
                                         const picture::Opening& opening,
                                         const room::SeatPlan& plan,
                                         const std::vector<room::SeatBlock>& blocks);

}  // namespace rakeline::sight
