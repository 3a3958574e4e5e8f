// SPDX-License-Identifier: MIT
#include "light/screen_gain.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"

#include <algorithm>
#include <array>
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

/// Nodes and weights of Gauss and Legendre's five-point rule on -1 ... +1, exact for polynomials
/// to degree 9. Source: closed form, nodes sqrt(5 -+ 2 sqrt(10/7)) / 3.
struct Node {
    double x = 0.0;
    double weight = 0.0;
};

std::array<Node, 5> gauss_nodes() {
    const double inner = std::sqrt(5.0 - 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
    const double outer = std::sqrt(5.0 + 2.0 * std::sqrt(10.0 / 7.0)) / 3.0;
    const double inner_weight = (322.0 + 13.0 * std::sqrt(70.0)) / 900.0;
    const double outer_weight = (322.0 - 13.0 * std::sqrt(70.0)) / 900.0;
    return {{{-outer, outer_weight},
             {-inner, inner_weight},
             {0.0, 128.0 / 225.0},
             {inner, inner_weight},
             {outer, outer_weight}}};
}

constexpr int kPanels = 64;

/// Beyond this many widths the lobe is under 2^-64 of its height: nothing to a double.
constexpr double kLobeWidths = 8.0;

/// 2 * integral of 2^-(a/w)^2 sin a cos a over the half space, in panels over the angles where the
/// lobe is more than nothing; 2 sin a cos a = sin 2a.
double lobe_reflectance(double width_rad) {
    const double end = std::min(0.5 * base::kPi, kLobeWidths * width_rad);
    const double half_panel = 0.5 * end / kPanels;
    const std::array<Node, 5> nodes = gauss_nodes();
    double sum = 0.0;
    for (int panel = 0; panel < kPanels; ++panel) {
        for (const Node& node : nodes) {
            const double angle = half_panel * (2.0 * panel + 1.0 + node.x);
            const double widths = angle / width_rad;
            sum += node.weight * std::exp2(-widths * widths) * std::sin(2.0 * angle);
        }
    }
    return half_panel * sum;
}

}  // namespace

GainModel::GainModel(const room::ScreenSurface& surface, double open_area) : lobe_(surface.lobe) {
    RL_ASSERT(open_area >= 0.0 && open_area <= 1.0);
    const double sheet = surface.gain_includes_perforation ? 1.0 : 1.0 - open_area;
    const bool matte = surface.lobe == room::LobeKind::matte;
    matte_ = sheet * (matte ? surface.peak_gain : surface.matte_gain);
    if (matte) return;
    RL_ASSERT(surface.half_gain_angle_rad > 0.0);
    lobe_height_ = sheet * (surface.peak_gain - surface.matte_gain);
    lobe_width_rad_ = lobe_width(surface);
}

double GainModel::gain_off_lobe(double angle_rad) const {
    const double widths = angle_rad / lobe_width_rad_;
    return matte_ + lobe_height_ * std::exp2(-widths * widths);
}

double GainModel::gain(const Directions& at) const {
    const double cos_incoming = -glm::dot(at.incoming, at.normal);
    const bool seen_lit_side = cos_incoming > 0.0 && glm::dot(at.toward_eye, at.normal) > 0.0;
    if (!seen_lit_side) return 0.0;
    if (lobe_ == room::LobeKind::matte) return matte_;
    const glm::dvec3 mirrored = at.incoming + 2.0 * cos_incoming * at.normal;
    const glm::dvec3 lobe = lobe_ == room::LobeKind::mirror ? mirrored : -at.incoming;
    return gain_off_lobe(geometry::angle_between(at.toward_eye, lobe));
}

double gain(const room::ScreenSurface& surface,
            double open_area,
            const glm::dvec3& incoming,
            const glm::dvec3& toward_eye,
            const glm::dvec3& normal) {
    return GainModel(surface, open_area).gain({incoming, toward_eye, normal});
}

double hemispherical_reflectance(const room::ScreenSurface& surface) {
    if (surface.lobe == room::LobeKind::matte) return surface.peak_gain;
    // The part that is the same in all directions gives matte * 2 * integral of sin cos = matte.
    const double lobe_height = surface.peak_gain - surface.matte_gain;
    return surface.matte_gain + lobe_height * lobe_reflectance(lobe_width(surface));
}

}  // namespace rakeline::light
