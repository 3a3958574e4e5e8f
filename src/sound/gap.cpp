// SPDX-License-Identifier: MIT
#include "sound/gap.hpp"

#include "base/assert.hpp"
#include "base/units.hpp"
#include "sound/direct_path.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// How far the phase of a pass falls behind over the detour, rad.
double lag(double frequency_hz, const Gap& gap, const Air& air) {
    return 2.0 * base::kPi * frequency_hz * gap.detour_m() / air.sound_speed_m_s();
}

/// Phase by which the sheet leads what it sends back, 0 to pi/2.
double sheet_lead(const GapSetting& setting, double frequency_hz, double incidence_rad) {
    const auto relative = relative_impedance(setting.sheet, frequency_hz, setting.air);
    return std::arg(reflection_factor(relative, std::cos(incidence_rad)));
}

double decibels(double energy_ratio) {
    return 10.0 * std::log10(energy_ratio);
}

}  // namespace

double Gap::depth_m() const {
    return along_m * std::cos(incidence_rad);
}

double Gap::detour_m() const {
    return 2.0 * depth_m() * std::cos(incidence_rad);
}

std::optional<Gap> gap_of(const room::Loudspeaker& loudspeaker, const geometry::Patch& surface) {
    const glm::dvec3 from{loudspeaker.across_m, loudspeaker.up_m, loudspeaker.back_m};
    const glm::dvec3 forward = axes_of(loudspeaker).forward;
    for (const geometry::PatchHit& hit : geometry::hits(surface, {from, forward})) {
        const glm::dvec3 normal = geometry::normal_at(surface, hit.uv);
        const double angle = geometry::angle_between(hit.from_front ? -forward : forward, normal);
        return Gap{.along_m = hit.t, .incidence_rad = angle};
    }
    return std::nullopt;
}

double baffle_reflection(const room::OctaveAbsorption& baffle, double frequency_hz) {
    const auto& octaves = room::kAbsorptionOctaves_hz;
    const double at = std::clamp(std::log2(frequency_hz / octaves.front()), 0.0,
                                 static_cast<double>(octaves.size() - 1));
    const auto low = std::min(static_cast<std::size_t>(at), octaves.size() - 2);
    const double share = at - static_cast<double>(low);
    const double alpha = std::lerp(baffle.by_octave.at(low), baffle.by_octave.at(low + 1), share);
    return std::sqrt(std::max(0.0, 1.0 - alpha));
}

std::complex<double> loop_factor(std::complex<double> relative_impedance,
                                 double baffle_reflection,
                                 const Gap& gap) {
    return baffle_reflection * reflection_factor(relative_impedance, std::cos(gap.incidence_rad));
}

double gap_level_db(std::complex<double> loop,
                    double frequency_hz,
                    const Gap& gap,
                    const Air& air) {
    const std::complex<double> q = loop * std::polar(1.0, -lag(frequency_hz, gap, air));
    return -decibels(std::norm(1.0 - q));
}

double gap_band_level_db(
    std::complex<double> loop, double low_hz, double high_hz, const Gap& gap, const Air& air) {
    RL_ASSERT(0.0 < low_hz && low_hz < high_hz);
    const double r = std::abs(loop);
    const double lead = std::arg(loop);
    const double a = lag(low_hz, gap, air) - lead;
    const double b = lag(high_hz, gap, air) - lead;
    // So near each other the two ends are one point, and the difference below is only rounding.
    if (b - a < 1e-6) return gap_level_db(loop, 0.5 * (low_hz + high_hz), gap, air);
    const auto upto = [r](double x) {
        return x + 2.0 * std::atan2(r * std::sin(x), 1.0 - r * std::cos(x));
    };
    return decibels((upto(b) - upto(a)) / ((1.0 - r * r) * (b - a)));
}

double gap_ripple_db(std::complex<double> loop) {
    const double r = std::abs(loop);
    return 2.0 * decibels((1.0 + r) / (1.0 - r));
}

double ripple_spacing_hz(const Gap& gap, const Air& air) {
    return air.sound_speed_m_s() / gap.detour_m();
}

double first_dip_hz(const GapSetting& setting, const Gap& gap) {
    const double spacing = ripple_spacing_hz(gap, setting.air);
    double low = 0.5 * spacing;
    double high = 0.75 * spacing;
    constexpr int kHalvings = 36;
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = 0.5 * (low + high);
        const double short_of = base::kPi + sheet_lead(setting, middle, gap.incidence_rad) -
                                lag(middle, gap, setting.air);
        (short_of > 0.0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

double distance_of_dip_m(const GapSetting& setting, double frequency_hz, double incidence_rad) {
    const double cosine = std::cos(incidence_rad);
    RL_ASSERT(cosine > 0.0);
    const double detour = (base::kPi + sheet_lead(setting, frequency_hz, incidence_rad)) *
                          setting.air.sound_speed_m_s() / (2.0 * base::kPi * frequency_hz);
    return detour / (2.0 * cosine * cosine);
}

}  // namespace rakeline::sound
