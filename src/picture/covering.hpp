// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/polygon.hpp"
#include "picture/opening.hpp"
#include "picture/picture_map.hpp"

#include <optional>

/// How much larger a picture has to be to fill its masked opening, how far it reaches past each
/// edge of it, and where the masking stands for a format.
namespace rakeline::picture {

/// Edges as seen from the seats.
enum class PictureEdge { left, right, top, bottom };
const char* edge_name(PictureEdge edge);  ///< "left", "right", "top", "bottom"

/// How far the picture's rim lies outside each edge of the opening, metres along the surface,
/// square to the edge: the least along the edge. Negative: the picture falls short there.
struct EdgeOverfill {
    double left_m = 0.0;
    double right_m = 0.0;
    double top_m = 0.0;
    double bottom_m = 0.0;

    double least_m() const;
};

/// What the opening asks of a picture. With (x, y) the gate points that light the opening's border
/// and a by h the gate, the gate opened about its own centre by
///     k = max over the border of max(|x| / (a / 2), |y| / (h / 2))
/// just fills the opening: k > 1 leaves some of it dark, k < 1 has that much to spare. The gate
/// points are those of the exact map, lens shift included. Source: derived, exact map. On a plane
/// the opening's edges are straight in the gate, so its corners decide; on a cylinder the greatest
/// reach between corners is searched along the edge.
struct Covering {
    geometry::Rectangle reach;  ///< smallest upright gate area that holds the opening, metres
    double enlargement = 1.0;
    PictureEdge decides = PictureEdge::left;  ///< edge of the picture that k comes from
    std::optional<EdgeOverfill> overfill;     ///< nothing where the rim's line runs off the surface

    /// Fills the opening everywhere; rounding may leave a picture that just fills it 1e-9 short.
    bool covers() const { return enlargement <= 1.0 + 1e-9; }
};

/// Nothing if some of the opening's border lies behind the lens or shows it its back.
std::optional<Covering> covering(const PictureMap& map,
                                 glm::dvec2 gate_size_m,
                                 const Opening& opening);

/// The longest focal length with which the gate, aimed and shifted as `map` is, fills the opening
/// when focused at `throw_m`: every gate point of the opening scales with the image distance b from
/// the axis, so each edge of the gate bounds b, and f = b D / (D + b). Nothing where no focal
/// length does (a shift that holds the axis outside the gate on the side where the picture ends).
std::optional<double> covering_focal_length(const PictureMap& map,
                                            glm::dvec2 gate_size_m,
                                            const Covering& covering,
                                            double throw_m);

/// Where each mask's edge stands, metres along the surface from the frame's centre lines, outward:
/// `left_m` and `right_m` from the upright one, `top_m` and `bottom_m` from the level one.
/// Negative: the mask stands past the centre line. Fixed masking stands at the frame for every
/// format.
struct MaskStops {
    double left_m = 0.0;
    double right_m = 0.0;
    double top_m = 0.0;
    double bottom_m = 0.0;
};

MaskStops mask_stops(const room::Screen& screen, const room::Format& format);

}  // namespace rakeline::picture
