// SPDX-License-Identifier: MIT
#pragma once

#include "light/light_study.hpp"

#include <array>
#include <vector>

/// The luminance of a picture over its whole opening, as one eye sees it.
namespace rakeline::light {

struct LitPicture;  // lit_point.hpp

/// A place of the opening and what it sends to the eye.
struct MapPlace {
    glm::dvec2 halves{0.0};  ///< from the opening's centre, right and up, -1 ... +1 at its edges
    double cdm2 = 0.0;       ///< 0: no picture falls there, or the sheet turns its back to the eye
};

/// Places on an even grid from edge to edge of the opening, in document order: row by row from the
/// lower edge, each from the left; after them the places where the light ends inside the opening.
/// Those on its edge are read 1e-9 of a half inside it. The standard's points (light_study.hpp) are
/// among the grid's.
struct LuminanceMap {
    static constexpr int kAcross = 61;  ///< odd, and with steps that meet kPointInset
    static constexpr int kUp = 41;

    std::vector<MapPlace> places;
    std::vector<std::array<int, 3>> triangles;  ///< of the lit part, indices of places

    const MapPlace& at(int across, int up) const {
        return places.at(static_cast<std::size_t>(up * kAcross + across));
    }
};

/// L = E G / pi, cd/m2, at every place of the map toward `eye`. Where the light ends between two
/// neighbours on the grid, the last lit place is found by halving, to 1e-6 of half the opening.
/// Source: definition of the luminance factor, as for the reading points.
LuminanceMap luminance_map(const LitPicture& picture, const glm::dvec3& eye);

/// One of `pictures` as an eye sees it; its place on the grid at a reading point has that reading's
/// value to the bit.
LuminanceMap map_picture(const LightInput& in,
                         const picture::PictureStudy& pictures,
                         const picture::ProjectedPicture& picture,
                         const glm::dvec3& eye);

/// The least and the greatest luminance of the lit places.
struct MapRange {
    double least_cdm2 = 0.0;
    double most_cdm2 = 0.0;
};

/// All 0 where nothing is lit.
MapRange range_of(const LuminanceMap& map);

}  // namespace rakeline::light
