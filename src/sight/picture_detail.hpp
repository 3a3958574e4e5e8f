// SPDX-License-Identifier: MIT
#pragma once

#include "picture/picture_map.hpp"

/// How fine the picture is at an eye: the angle of one pixel, or of one line on film.
namespace rakeline::sight {

/// One minute of arc, which a normal eye tells apart, rad. From memory: visual acuity 1.0 is
/// defined by it (ISO 8596).
inline constexpr double kAcuity_rad = 2.908882086657216e-4;

/// True angle at the eye, rad, of `element_m` across the gate at its centre, thrown on the screen.
///
///     a = angle(P(e/2, 0) - eye, P(-e/2, 0) - eye),   P the exact map from gate to surface
///
/// Seen squarely from a distance d it is e' / d, e' the element's width on the screen; from the
/// side it is foreshortened, so that a picture is finer there. Nothing where the lens's axis misses
/// the surface. Source: definition of the figure; for small angles it is d / e' pi / 180 elements a
/// degree, derived.
std::optional<double> element_angle(const picture::PictureMap& map,
                                    double element_m,
                                    const glm::dvec3& eye);

}  // namespace rakeline::sight
