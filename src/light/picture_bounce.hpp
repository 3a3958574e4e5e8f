// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"

/// Light of the picture that the hall sends back to it. Walls, floor and ceiling beside a picture
/// get most of its light and see most of it, so an even spread of the first bounce falls short by
/// half in dark halls; hence that bounce is summed over the surfaces as they stand.
namespace rakeline::light {

struct StrayRoom;

/// The picture as an upright rectangle in the hall, metres: its middle, width and height.
struct UprightPicture {
    glm::dvec3 centre{0.0};
    glm::dvec2 size{0.0};
};

/// Part of the light that leaves a diffuse element at `place` (inward unit `normal`) and falls on
/// the picture; as well the element's illuminance over the picture's luminous exitance:
///
///     c = 1/(2 pi) sum over edges of (angle of the edge) * (its plane's normal . n)
///
/// The picture lies wholly on the inward side. Source: Lambert's formula for a polygon
/// (Photometria, 1760), as in textbooks of radiative transfer, from memory.
double seen_fraction(const glm::dvec3& place,
                     const glm::dvec3& normal,
                     const UprightPicture& picture);

/// Of a picture that sends out 1 lm/m2, with c and reflectance r_i of each surface element dA.
struct FirstBounce {
    double landed_lm = 0.0;     ///< sum of c dA: on all surfaces, the picture's area but for steps
    double reflected_lm = 0.0;  ///< R_1 = sum of r_i c dA
    double returned_lm = 0.0;   ///< R_2 = sum of r_i c^2 dA: of that, straight onto the picture
};

/// Over side walls, booth wall, ceiling and floor before the picture, kBounceCells squared elements
/// each, finer toward the picture. The floor is level at the datum and everywhere as light as floor
/// and seats together; balconies are left out.
FirstBounce first_bounce(const StrayRoom& room, const UprightPicture& picture);

inline constexpr int kBounceCells = 24;

}  // namespace rakeline::light
