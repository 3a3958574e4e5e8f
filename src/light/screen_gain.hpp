// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "room/layout.hpp"

/// Gain of a screen surface by direction: luminance over that of a perfect matte white under the
/// same illuminance.
namespace rakeline::light {

/// G for light arriving along `incoming` (unit, from lens to surface), seen along `toward_eye`
/// (unit, surface to eye), surface normal `normal` (unit). A matte part plus a lobe about the
/// mirror or the incoming direction, G = matte + (peak - matte) * 2^-(angle/w)^2, w chosen so that
/// the whole gain is half its peak at the half-gain angle. Gain is 0 from behind. Open area is
/// counted once: where the gain was measured on an unperforated sheet, G is multiplied by (1 -
/// open_area). Source of the shape: derived in the .cpp; the form is our own, stated in
/// DEVELOPERS.md.
double gain(const room::ScreenSurface& surface,
            double open_area,
            const glm::dvec3& incoming,
            const glm::dvec3& toward_eye,
            const glm::dvec3& normal);

/// Hemispherical reflectance at normal incidence, 2 * integral of G sin cos; a claim over 1 would
/// send back more light than arrives.
double hemispherical_reflectance(const room::ScreenSurface& surface);

}  // namespace rakeline::light
