// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "picture/opening.hpp"

#include <array>
#include <optional>
#include <vector>

/// The opening to file in a film projector's gate plate, so that the light on the screen is the
/// masked opening and nothing else.
namespace rakeline::picture {

struct ProjectedPicture;  // picture_study.hpp, which holds each film picture's plate

/// How far the filed outline, mapped to the screen, may stand off the opening's border anywhere
/// between its points.
inline constexpr double kPlateTolerance_m = 2e-5;

struct PlateInput {
    const ProjectedPicture& picture;  ///< its map and gate size are read
    const Opening& opening;
    room::SourceKind kind = room::SourceKind::film;
    double corner_radius_m = 0.0;  ///< of the opening on the screen
    double allowance_m = 0.0;  ///< left standing all round in the gate, for the last fit by hand
};

/// Closed outline, counter-clockwise, in gate coordinates of the picture (picture_map.hpp): origin
/// at the aperture's centre, x to the picture's right, y to its top as seen from the seats.
struct Plate {
    std::vector<glm::dvec2> outline_m;
    glm::dvec2 aperture_m{0.0};
    double corner_radius_m = 0.0;
    double allowance_m = 0.0;
    /// Where its sides meet before the corners are rounded, from the picture's bottom left
    /// counter-clockwise. On a curved screen the sides are bowed; these are their ends all the
    /// same.
    std::array<glm::dvec2, 4> corners_m{};
};

/// The border of the opening through the exact map backward, point by point: on a plane straight
/// edges stay straight and need their ends alone; elsewhere points are put in until the straight
/// line between two of them, mapped to the screen, keeps to the border within kPlateTolerance_m.
/// Then every side is moved inward by the allowance (geometry/inset.hpp).
///
/// Refused: a digital projector; an opening that reaches outside the aperture, where no light comes
/// to fill it; a corner radius or allowance that is negative or leaves nothing.
/// Source: derived: exact gate-to-screen map.
base::Result<Plate> plate_outline(const PlateInput& in);

/// The plate's opening in numbers, sides by the picture as seen from the seats.
struct PlateExtent {
    double width_m = 0.0;  ///< over all: on a curved screen or under keystone the greatest
    double height_m = 0.0;
    /// How far each side stands from the aperture's middle, along the aperture's centre line that
    /// it crosses; negative past it. Nothing where that line does not meet the opening.
    std::optional<double> left_m, right_m, top_m, bottom_m;
};
PlateExtent plate_extent(const Plate& plate);

/// From which side one looks at the plate. Up stays up.
enum class PlateView { from_lamp, from_lens };

/// A gate point of the picture, as it stands before someone who looks at the gate: x to their
/// right, y up. Derived in plate.cpp; from the lamp (-x, -y), the picture turned by half a turn;
/// from the lens (x, -y), upside down and mirrored.
glm::dvec2 seen(glm::dvec2 gate_m, PlateView view);

/// The whole outline as seen, counter-clockwise again.
std::vector<glm::dvec2> outline_seen(const Plate& plate, PlateView view);

}  // namespace rakeline::picture
