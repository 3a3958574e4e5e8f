// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"

/// How an eye has the picture: true angles in space, and the angles in plan that rules speak of.
namespace rakeline::sight {

/// Angles in rad at one eye for one opening.
struct ViewingAngles {
    double subtended_width = 0.0;   ///< true angle between the side edges' mid-points
    double subtended_height = 0.0;  ///< between the mid-points of bottom and top edge
    double elevation_top = 0.0;     ///< eye to the top edge's mid-point, from horizontal
    double elevation_centre = 0.0;  ///< eye to the picture's centre, from horizontal
    double elevation_bottom = 0.0;  ///< eye to the bottom edge's mid-point, from horizontal
    double off_axis = 0.0;          ///< in plan, 0 to pi: see below
    double off_axis_far = 0.0;      ///< in plan, to the farther side edge
    double distance_m = 0.0;        ///< eye to picture centre
    double distance_widths = 0.0;
    double distance_heights = 0.0;
    double edge_left = 0.0;   ///< true angle between the ends of the left edge
    double edge_right = 0.0;  ///< of the right edge

    /// How much larger the right edge looks than the left one, from -2 to 2:
    ///
    ///     2 (h_right - h_left) / (h_right + h_left),   h the edges' true angles at the eye
    ///
    /// the form in which keystone is stated. Nought on the centre line of a hall, and far away.
    /// Source: definition of the figure, after that of the picture's own keystone.
    double apparent_keystone() const {
        return 2.0 * (edge_right - edge_left) / (edge_right + edge_left);
    }
    bool operator==(const ViewingAngles&) const = default;
};

/// The picture's edges and centre as the eye sees them.
///
///     subtended = angle between the directions from the eye to two opposite edge mid-points
///     elevation = atan(height over the eye / horizontal distance), positive upward
///     off_axis  = angle between the line picture centre -> eye and the surface's normal at the
///                 picture's centre, both dropped into plan
///     off_axis_far: the same with the mid-point of the side edge that is farther from the eye,
///                 against that same normal at the centre
///
/// On the centre line and level with the picture's centre the subtended width of a flat picture is
/// 2 atan(W / 2D). Source: definitions of the figures, derived from the geometry alone.
/// Example: W 12, D 6, seat 4 m off centre, eye level with the picture's centre -> subtended width
/// 77.47 deg, off_axis_far 59.04 deg.
ViewingAngles viewing_angles(const geometry::Patch& surface,
                             const picture::Opening& opening,
                             const glm::dvec3& eye);

/// How far a head turns from the seat's facing to the picture's centre, in plan: 0 to pi, either
/// way. On straight rows before a flat upright screen it is the off-axis angle; rows in arcs and
/// turned blocks are built to lessen it. Source: definition of the figure.
double head_turn(const geometry::Patch& surface,
                 const picture::Opening& opening,
                 const glm::dvec3& eye,
                 const glm::dvec3& facing);

}  // namespace rakeline::sight
