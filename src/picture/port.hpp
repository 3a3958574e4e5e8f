// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/polygon.hpp"
#include "picture/picture_map.hpp"
#include "picture/picture_shape.hpp"

#include <optional>
#include <vector>

/// The light of a picture where it passes the booth wall, and the opening that it needs there.
/// Places in the wall are (across, up) in the room frame, metres.
///
/// The light of one picture point comes from the whole pupil: a disc about the lens's principal
/// point, square to its axis, of diameter f / N. (Thin lens; a real lens has its exit pupil a
/// little before or behind that.) From the disc it narrows to its point on the screen, and the wall
/// cuts that cone in an ellipse. With q = L + r (c e1 + s e2), c^2 + s^2 = 1, a point of the
/// pupil's rim, P the picture point and w the wall's distance from the screen wall, the ray meets
/// the wall at
///     (P (q_z - w) + q (w - P_z)) / (q_z - P_z),
/// a ratio of two linear forms in (c, s); so its reach in any direction is the greater root of a
/// quadratic. Source: derived. All rays of a picture pass where those of its rim do; on a plane its
/// corners decide, on a cylinder the rim is taken at the points of PictureShape::outline.
namespace rakeline::picture {

/// What makes the light that passes the wall.
struct PortBeam {
    const PictureMap& map;
    const PictureShape& shape;
    double pupil_radius_m = 0.0;  ///< f / (2 N); 0: the rays through the lens's middle alone
    double booth_wall_back_m = 0.0;
};

/// Smallest upright rectangle in the wall that holds all light of the picture. Nothing if the pupil
/// does not stand wholly behind the wall, or the picture not wholly before it.
std::optional<geometry::Rectangle> port_light(const PortBeam& beam);

/// A polygon close within that light's edge, counter-clockwise as (across, up): its corners are the
/// points that reach farthest in so many directions. Empty where port_light has nothing.
std::vector<glm::dvec2> port_outline(const PortBeam& beam, int corners = 96);

/// The port's own rim.
geometry::Rectangle port_rim(const room::Port& port);

/// Least distance from light that this rectangle holds to the port's rim; negative: the wall cuts
/// so far into it.
double port_margin(const room::Port& port, const geometry::Rectangle& light);

}  // namespace rakeline::picture
