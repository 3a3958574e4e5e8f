// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "picture/picture_map.hpp"

#include <optional>
#include <vector>

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

/// The same circle as it stands in the gate, m:
///
///     c_gate = c b0 / D' = a f |D' - D0| / (D' (D0 - f)),   b0 = f D0 / (D0 - f)
///
/// f focal length, m; b0 lens to gate; D' > 0, D0 > f. Source: derived below.
///
/// Rays through the middle of the pupil run straight, so a length in the gate at b0 grows to D' /
/// b0 of itself on the plane at D'; c seen back through that is c_gate. Behind the lens it is the
/// same circle again: the point at D' has its image at b' = f D' / (D' - f), and the cone from the
/// pupil to that tip has the diameter a |b0 - b'| / b' in the gate, which multiplies out to the
/// above. So a gate that stands off by d from sharp blurs by a d / b', near N c = d where the focus
/// is far: the depth of focus.
double gate_blur(double pupil_m, double focal_length_m, double distance_m, double focused_m);

struct Focus {
    double pupil_m = 0.0;       ///< f / N
    double nearest_m = 0.0;     ///< least distance along the axis to the surface in the opening
    double farthest_m = 0.0;    ///< greatest
    double best_m = 0.0;        ///< focus that makes the worst blur on the screen least
    double worst_blur_m = 0.0;  ///< circle of confusion where it is worst, at that focus
    double worst_gate_blur_m = 0.0;  ///< in the gate: at the nearest part, b0 / D' being greatest
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
/// plane holds the axis. Nothing if a part of the opening lies level with the lens or behind it, or
/// the best focus no farther than the focal length.
std::optional<Focus> best_focus(const PictureMap& map, const Opening& opening, double f_number);

/// Circle of confusion, m, at a surface point, square to the axis, the lens being focused at
/// `focused_m` > 0. (On the surface it is drawn out to an ellipse, 1 / cos of the incidence long.)
/// Nothing if the point lies level with the lens or behind it.
std::optional<double> blur_at(const PictureMap& map,
                              glm::dvec2 uv,
                              double pupil_m,
                              double focused_m);

/// Circles of confusion on a grid over an opening, its border included: `columns` even steps of u
/// from left to right by `rows` of v from bottom to top, as seen from the seats.
struct BlurField {
    int columns = 0;
    int rows = 0;
    std::vector<double> blur_m;  ///< row by row from the bottom, each from the left
    double at(int column, int row) const;
};

/// The blur all over the opening at best focus. `columns`, `rows` at least 2. `focus` is that of
/// the same map and opening, so every point of it lies before the lens.
BlurField blur_field(
    const PictureMap& map, const Opening& opening, const Focus& focus, int columns, int rows);

/// Side, m, of the square that has the area which one pixel lights at the centre of the part of the
/// imager in use: p sqrt(J), p pixel pitch, m, J the map's area ratio there. Square-on to a plane
/// that is p (D - f) / f. Nothing if that point misses the surface. Source: derived: exact map.
std::optional<double> pixel_size(const PictureMap& map, double pixel_pitch_m);

/// Size, m, on the screen of an upright detail of `gate_m` in the middle of the gate: g sqrt(J /
/// q), J the map's area ratio there, q the squeeze, which draws J out across alone. Upright,
/// because there an anamorphic picture is blurred most against its detail. Nothing if that point
/// misses the surface. Source: derived: exact map.
std::optional<double> detail_size(const PictureMap& map, double gate_m);

/// Half a line pair in the gate, m: 1 / (2 R), R line pairs a millimetre that a film is held to, >
/// 0.
double film_detail(double resolution_lp_mm);

}  // namespace rakeline::picture
