// SPDX-License-Identifier: MIT
#pragma once

#include "picture/opening.hpp"
#include "sound/beat.hpp"

#include <array>
#include <optional>
#include <vector>

/// The beat of one digital picture with the holes: where it is worst, and who sees it.
namespace rakeline::sound {

/// A picture made of pixels, on the sheet.
struct PixelPicture {
    int projector = 0;  ///< indices in the layout
    int format = 0;
    picture::PictureMap map;
    double pixel_m = 0.0;  ///< in the gate
    geometry::Rectangle opening;
    double luminance_cdm2 = 0.0;  ///< at the picture's centre, > 0
};

/// Where beats are looked for: the opening's centre and corners.
inline constexpr int kBeatPlaces = 5;
std::array<glm::dvec2, kBeatPlaces> beat_places(const geometry::Rectangle& opening);

/// A frequency on the surface as an eye has it, cycles a radian.
///
///     D sqrt(|k|^2 + (k . s)^2 / (1 - |s|^2))
///       D distance from the eye, s the line of sight (unit) along the surface's two directions
///
/// Seen squarely D |k|; bands seen from the side crowd together. Source: derived.
double cycles_per_radian(const geometry::Patch& surface,
                         glm::dvec2 uv,
                         glm::dvec2 frequency,
                         const glm::dvec3& eye);

/// What one eye makes of bands: contrast times sensitivity; above 1 they are seen.
struct Seen {
    double cycles_per_radian = 0.0;
    double visibility = 0.0;
    bool operator==(const Seen&) const = default;
};

struct PictureBeat {
    int projector = 0;
    int format = 0;
    Beat beat;
    glm::dvec2 uv{0.0};      ///< the place where it is worst
    Lattice pixels;          ///< there
    std::vector<Seen> seen;  ///< per seat
    int worst_seat = 0;
    double seats_that_see = 0.0;  ///< share of the seats
    bool operator==(const PictureBeat&) const = default;
};

/// Of the beats at all places the one with the highest visibility to the nearest, the middle and
/// the farthest of the eyes. Nothing where no beat is coarser than both patterns, or without eyes.
/// Contrast sensitivity is ContrastSense's at the picture's luminance, over the area of the opening
/// as the eye has it.
std::optional<PictureBeat> worst_beat(const PixelPicture& picture,
                                      const std::vector<Order>& holes,
                                      const std::vector<glm::dvec3>& eyes);

/// The highest visibility alone, to the three eyes: for comparing many sheets. 0 without a beat.
double beat_risk(const PixelPicture& picture,
                 const std::vector<Order>& holes,
                 const std::vector<glm::dvec3>& eyes);

}  // namespace rakeline::sound
