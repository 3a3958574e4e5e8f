// SPDX-License-Identifier: MIT
#include "light/screen_gain.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <cmath>

namespace rakeline::light {
namespace {

/// Solve matte + (peak - matte) 2^-(h/w)^2 = peak/2 for w. With q = (peak/2 - matte)/(peak - matte)
/// the equation is 2^-(h/w)^2 = q, hence (h/w)^2 = -lg2 q. For 0 <= matte < peak/2, q lies in
/// (0, 1/2], so that w exists and is at most h.
double lobe_width(const room::ScreenSurface& surface) {
    const double half = 0.5 * surface.peak_gain;
    if (surface.matte_gain >= half) return surface.half_gain_angle_rad;
    const double q = (half - surface.matte_gain) / (surface.peak_gain - surface.matte_gain);
    return surface.half_gain_angle_rad / std::sqrt(-std::log2(q));
}

constexpr int kPanels = 8;

/// Beyond this many widths the lobe is under 2^-64 of its height: nothing to a double.
constexpr double kLobeWidths = 8.0;

/// 2 * integral of 2^-(a/w)^2 sin a cos a over the half space, in panels over the angles where the
/// lobe is more than nothing; 2 sin a cos a = sin 2a.
double lobe_reflectance(double width_rad) {
    const double end = std::min(0.5 * base::kPi, kLobeWidths * width_rad);
    const auto sent_back = [width_rad](double angle) {
        const double widths = angle / width_rad;
        return std::exp2(-widths * widths) * std::sin(2.0 * angle);
    };
    double sum = 0.0;
    for (int panel = 0; panel < kPanels; ++panel) {
        sum += boost::math::quadrature::gauss<double, 20>::integrate(
            sent_back, end * panel / kPanels, end * (panel + 1) / kPanels);
    }
    return sum;
}

/// Measured gains stand in place of peak, matte part and half-gain angle.
bool is_measured(const room::ScreenSurface& surface) {
    return surface.gain_table.size() >= 2;
}

/// Of everything but the retro part.
double body_reflectance(const room::ScreenSurface& surface) {
    if (surface.lobe == room::LobeKind::matte) return surface.peak_gain;
    if (is_measured(surface)) return GainCurve(surface.gain_table).reflectance();
    // The part that is the same in all directions gives matte * 2 * integral of sin cos = matte.
    const double lobe_height = surface.peak_gain - surface.matte_gain;
    return surface.matte_gain + lobe_height * lobe_reflectance(lobe_width(surface));
}

}  // namespace

GainModel::GainModel(const room::ScreenSurface& surface, double open_area)
    : lobe_(surface.lobe), sheet_(surface.gain_includes_perforation ? 1.0 : 1.0 - open_area) {
    RL_ASSERT(open_area >= 0.0 && open_area <= 1.0);
    RL_ASSERT(surface.half_gain_angle_rad > 0.0);
    const bool matte = surface.lobe == room::LobeKind::matte;
    matte_ = sheet_ * (matte ? surface.peak_gain : surface.matte_gain);
    retro_height_ = sheet_ * surface.retro_gain;
    retro_width_rad_ = surface.half_gain_angle_rad;
    if (matte) return;
    if (is_measured(surface)) {
        curve_.emplace(surface.gain_table);
        return;
    }
    lobe_height_ = sheet_ * (surface.peak_gain - surface.matte_gain);
    lobe_width_rad_ = lobe_width(surface);
}

double GainModel::gain_off_lobe(double angle_rad) const {
    if (curve_) return sheet_ * curve_->at(angle_rad);
    const double widths = angle_rad / lobe_width_rad_;
    return matte_ + lobe_height_ * std::exp2(-widths * widths);
}

double GainModel::retro_off_back(double angle_rad) const {
    const double widths = angle_rad / retro_width_rad_;
    return retro_height_ * std::exp2(-widths * widths);
}

glm::dvec3 GainModel::lobe_direction(const glm::dvec3& incoming, const glm::dvec3& normal) const {
    if (lobe_ == room::LobeKind::retro) return -incoming;
    return incoming - 2.0 * glm::dot(incoming, normal) * normal;
}

double GainModel::gain(const Directions& at) const {
    const bool seen_lit_side =
        glm::dot(at.incoming, at.normal) < 0.0 && glm::dot(at.toward_eye, at.normal) > 0.0;
    if (!seen_lit_side) return 0.0;
    double gain = matte_;
    if (lobe_ != room::LobeKind::matte) {
        const glm::dvec3 lobe = lobe_direction(at.incoming, at.normal);
        gain = gain_off_lobe(geometry::angle_between(at.toward_eye, lobe));
    }
    if (retro_height_ == 0.0) return gain;
    return gain + retro_off_back(geometry::angle_between(at.toward_eye, -at.incoming));
}

double gain(const room::ScreenSurface& surface,
            double open_area,
            const glm::dvec3& incoming,
            const glm::dvec3& toward_eye,
            const glm::dvec3& normal) {
    return GainModel(surface, open_area).gain({incoming, toward_eye, normal});
}

double hemispherical_reflectance(const room::ScreenSurface& surface) {
    const double body = body_reflectance(surface);
    if (surface.retro_gain == 0.0) return body;
    return body + surface.retro_gain * lobe_reflectance(surface.half_gain_angle_rad);
}

}  // namespace rakeline::light
