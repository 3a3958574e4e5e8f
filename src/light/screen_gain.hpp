// SPDX-License-Identifier: MIT
#pragma once

#include "geometry/vector.hpp"
#include "light/gain_curve.hpp"
#include "room/layout.hpp"

#include <optional>

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
///     G = (body(a) + retro * 2^-(b/h)^2) * open
///     body(a) = matte + (peak - matte) * 2^-(a/w)^2, or the measured gains at a (GainCurve)
///       a     angle between `toward_eye` and the lobe's direction, rad: the mirror direction of
///             the incoming light (angle-reflective) or the way back to the lens
///             (retro-reflective)
///       w     such that the body is half its peak at the half-gain angle h:
///             w = h / sqrt(-lg2((peak/2 - matte) / (peak - matte)))
///       b     angle between `toward_eye` and the way back to the lens, rad; this second lobe
///             (room::ScreenSurface::retro_gain) is half its own height at h
///       open  1 - open area where the gain was measured on an unperforated sheet, else 1
///
/// A matte surface has its peak gain in all directions, plus the retro part. Gain is 0 for an eye
/// or a lens behind the surface. Where the matte part alone is half the peak or more, the body
/// never falls to half of it; the half-gain angle is then the lobe's own: the lobe is half its
/// height there, w = h. The model is reciprocal, measured gains too: light sent the other way along
/// the same path meets the same gain, since a and b are the same for both. A sheet measured at one
/// incidence tells nothing of others; that its gains hang on a alone is this model's assumption.
/// Source: our own form, derived in the .cpp.
class GainModel {
public:
    GainModel(const room::ScreenSurface& surface, double open_area);

    double gain(const Directions& at) const;

    /// Gain of the body at `angle_rad` from its lobe's direction, on the seat side; without the
    /// retro part.
    double gain_off_lobe(double angle_rad) const;

    /// Gain of the retro part at `angle_rad` from the way back to the lens.
    double retro_off_back(double angle_rad) const;

    /// Where the body's lobe points: unit, for light along `incoming` on a surface of `normal`.
    glm::dvec3 lobe_direction(const glm::dvec3& incoming, const glm::dvec3& normal) const;

    bool has_retro_part() const { return retro_height_ > 0.0; }

    /// Whether every eye on the seat side sees the same gain.
    bool is_matte() const { return lobe_ == room::LobeKind::matte && retro_height_ == 0.0; }

private:
    room::LobeKind lobe_ = room::LobeKind::matte;
    double sheet_ = 1.0;  ///< open
    double matte_ = 1.0;
    double lobe_height_ = 0.0;     ///< peak - matte
    double lobe_width_rad_ = 1.0;  ///< w
    double retro_height_ = 0.0;
    double retro_width_rad_ = 1.0;    ///< h
    std::optional<GainCurve> curve_;  ///< in place of matte part and lobe
};

/// G for light arriving along `incoming` (unit, from lens to surface), seen along `toward_eye`
/// (unit, surface to eye), surface normal `normal` (unit): GainModel for a single direction.
double gain(const room::ScreenSurface& surface,
            double open_area,
            const glm::dvec3& incoming,
            const glm::dvec3& toward_eye,
            const glm::dvec3& normal);

/// Hemispherical reflectance at normal incidence of the surface as its gain was measured, the retro
/// part included,
///
///     rho = (1/pi) * integral of G cos dOmega = 2 * integral_0^(pi/2) of G sin cos da
///
/// A claim over 1 would send back more light than arrives. Relative error < 1e-12.
/// Source: definition of the luminance factor, L = G E / pi, integrated over the half space.
double hemispherical_reflectance(const room::ScreenSurface& surface);

}  // namespace rakeline::light
