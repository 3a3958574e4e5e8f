// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "picture/picture_map.hpp"

#include <array>
#include <optional>
#include <vector>

/// What the uncorrected picture looks like on the surface, and how it covers the opening.
namespace rakeline::picture {

/// Samples that each of the four edges of an outline is cut into.
inline constexpr int kSegmentsPerEdge = 64;

/// Shape of the uncorrected picture on the surface. Corners in the order top left, top right,
/// bottom right, bottom left as seen from the seats.
///
/// Widths and heights for the keystone are straight lines in space between two corners (chords of
/// a curved surface). Slopes and bows are taken on the unrolled surface (u, v).
struct PictureShape {
    std::array<glm::dvec2, 4> corners{};
    std::vector<glm::dvec2> outline;   ///< counter-clockwise from bottom left, edges finely sampled
    double keystone_vertical = 0.0;    ///< 2 (w_bottom - w_top) / (w_bottom + w_top)
    double keystone_horizontal = 0.0;  ///< 2 (h_right - h_left) / (h_right + h_left)
    double side_slope_rad = 0.0;  ///< mean lean of the sides, corner to corner, from the picture's
                                  ///< centre line; positive: narrower at the top
    double bow_top_m = 0.0;       ///< greatest sagitta of the edge over the straight line between
                                  ///< its corners, positive upward; 0 on a plane
    double bow_bottom_m = 0.0;
};

/// Nothing if any part of the picture's rim misses the surface.
std::optional<PictureShape> picture_shape(const PictureMap& map, glm::dvec2 gate_size_m);

/// How picture and opening cover each other. Exact on a plane; on a cylinder the edges are taken
/// as polylines, which errs by less than 2e-5 of the areas down to a radius of the screen's width
/// (tested by integrating the map's area ratio).
struct Coverage {
    double overfill = 0.0;   ///< picture area outside the opening over opening area
    double crop = 0.0;       ///< part of the source image (gate area) outside the opening
    double uncovered = 0.0;  ///< part of the opening that the picture leaves dark
};

Coverage coverage(const PictureMap& map,
                  glm::dvec2 gate_size_m,
                  const PictureShape& shape,
                  const Opening& opening);

}  // namespace rakeline::picture
