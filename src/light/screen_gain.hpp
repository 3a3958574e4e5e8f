// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "room/layout.hpp"

/// Gain of a screen surface by direction: luminance over that of a perfect matte white under the
/// same illuminance.
namespace rakeline::light {

/// Where light comes from and where it is seen from, at a point of the surface. All unit vectors.
struct Directions {
    glm::dvec3 incoming{0.0, 0.0, -1.0};   ///< from lens to surface
    glm::dvec3 toward_eye{0.0, 0.0, 1.0};  ///< from surface to eye
    glm::dvec3 normal{0.0, 0.0, 1.0};      ///< of the surface, on the seat side
};

/// The angular model of one surface, prepared once for many directions.
///
///     G = (matte + (peak - matte) * 2^-(a/w)^2) * open
///       a     angle between `toward_eye` and the lobe's direction, rad: the mirror direction of
///       the
///             incoming light (angle-reflective) or the way back to the lens (retro-reflective)
///       w     such that the whole gain is half its peak at the half-gain angle h:
///             w = h / sqrt(-lg2((peak/2 - matte) / (peak - matte)))
///       open  1 - open area where the gain was measured on an unperforated sheet, else 1
///
/// A matte surface has its peak gain in all directions. Gain is 0 for an eye or a lens behind the
/// surface. Where the matte part alone is half the peak or more, the gain never falls to half of
/// it; the half-gain angle is then the lobe's own: the lobe is half its height there, w = h.
/// The model is reciprocal: light sent the other way along the same path meets the same gain.
/// Source: our own form, derived in the .cpp.
class GainModel {
public:
    GainModel(const room::ScreenSurface& surface, double open_area);

    double gain(const Directions& at) const;

    /// Gain at `angle_rad` from the lobe's direction, on the seat side.
    double gain_off_lobe(double angle_rad) const;

private:
    room::LobeKind lobe_ = room::LobeKind::matte;
    double matte_ = 1.0;
    double lobe_height_ = 0.0;     ///< peak - matte
    double lobe_width_rad_ = 1.0;  ///< w
};

/// G for light arriving along `incoming` (unit, from lens to surface), seen along `toward_eye`
/// (unit, surface to eye), surface normal `normal` (unit): GainModel for a single direction.
double gain(const room::ScreenSurface& surface,
            double open_area,
            const glm::dvec3& incoming,
            const glm::dvec3& toward_eye,
            const glm::dvec3& normal);

/// Hemispherical reflectance at normal incidence of the surface as its gain was measured,
///
///     rho = (1/pi) * integral of G cos dOmega = 2 * integral_0^(pi/2) of G sin cos da
///
/// A claim over 1 would send back more light than arrives. Relative error < 1e-12.
/// Source: definition of the luminance factor, L = G E / pi, integrated over the half space.
double hemispherical_reflectance(const room::ScreenSurface& surface);

}  // namespace rakeline::light
