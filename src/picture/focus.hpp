// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "picture/picture_map.hpp"

#include <optional>

/// How sharp a picture can be on a surface that is not square to the lens axis.
///
/// Thin lens, focused on a plane square to the axis. Holds for a lens free of aberrations and of
/// field curvature, and for the upright direction of an anamorphic one (its across direction has
/// another pupil).
namespace rakeline::picture {

/// Diameter, m, of the circle of confusion on a plane square to the axis at the distance
/// `distance_m` from the principal plane, the lens being focused at `focused_m`:
///
///     c = a |D' - D0| / D0,   a = f / N
///
/// a pupil diameter, m; D' the distance, D0 the focus, m, both > 0. Source: derived below.
///
/// The rays of one gate point leave the pupil over its diameter a and meet in one point at D0. At
/// D' they fill the same cone (before D0 as well as behind it), |D' - D0| from its tip; the pupil
/// is its section at D0 from the tip. By similar triangles c : a = |D' - D0| : D0.
double blur(double pupil_m, double distance_m, double focused_m);

struct Focus {
    double pupil_m = 0.0;       ///< f / N
    double nearest_m = 0.0;     ///< least distance along the axis to the surface in the opening
    double farthest_m = 0.0;    ///< greatest
    double best_m = 0.0;        ///< focus that makes the worst blur least
    double worst_blur_m = 0.0;  ///< circle of confusion where it is worst, at that focus
};

/// Best focus over the masked opening:
///
///     D0 = (Dn + Df) / 2,   c = a (Df - Dn) / (Df + Dn)
///
/// Dn, Df nearest and farthest distance along the axis. Source: derived: of the two ends, the near
/// one's blur a (D0 - Dn) / D0 grows with D0 and the far one's a (Df - D0) / D0 falls, so the worst
/// is least where both are the same; every other distance lies between and is sharper.
///
/// Exact: on a plane the ends are corners; on a cylinder also where the generator's own normal
/// plane holds the axis. Nothing if a part of the opening lies level with the lens or behind it.
std::optional<Focus> best_focus(const PictureMap& map, const Opening& opening, double f_number);

/// Side, m, of the square that has the area which one pixel lights at the centre of the part of the
/// imager in use: p sqrt(J), p pixel pitch, m, J the map's area ratio there. Square-on to a plane
/// that is p (D - f) / f. Nothing if that point misses the surface. Source: derived: exact map.
std::optional<double> pixel_size(const PictureMap& map, double pixel_pitch_m);

}  // namespace rakeline::picture
