// SPDX-License-Identifier: MIT
#include "sound/directivity.hpp"

#include "base/assert.hpp"
#include "base/special.hpp"
#include "base/units.hpp"
#include "sound/held_curve.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// Half the pressure: 20 lg 2 dB; and the x where a piston's pressure has fallen to that.
constexpr double kEdgeDb = 6.020599913279624;
constexpr double kPistonEdgeX = 2.2150893677242323;

double wave_number(double frequency_hz, const Air& air) {
    return 2.0 * base::kPi * frequency_hz / air.sound_speed_m_s();
}

/// Nominal coverage of one plane, widened below the frequency that the mouth holds it from.
double widened(double nominal_rad, double mouth_m, double frequency_hz, const Air& air) {
    const double held_from = coverage_held_from_hz(mouth_m, 0.5 * nominal_rad, air);
    return nominal_rad * std::max(1.0, held_from / frequency_hz);
}

double from_table(const room::Loudspeaker& loudspeaker,
                  double room::CoveragePoint::*plane,
                  double frequency_hz) {
    std::vector<FrequencyValue> points;
    for (const room::CoveragePoint& point : loudspeaker.coverage_table)
        points.push_back({point.frequency_hz, point.*plane});
    return HeldCurve(points).at(frequency_hz);
}

Coverage horn_coverage(const room::Loudspeaker& l, double frequency_hz, const Air& air) {
    if (!l.coverage_table.empty())
        return {from_table(l, &room::CoveragePoint::across_rad, frequency_hz),
                from_table(l, &room::CoveragePoint::up_rad, frequency_hz)};
    return {widened(l.coverage_across_rad, l.piston_radius_m, frequency_hz, air),
            widened(l.coverage_up_rad, l.piston_radius_m, frequency_hz, air)};
}

/// piston_db over x = k a sin(angle).
double piston_level_db(double x) {
    // Below this 2 J1(x)/x is 1 - x^2/8 to the last bit.
    if (x < 1e-4) return 20.0 * std::log10(1.0 - x * x / 8.0);
    return 20.0 * std::log10(std::abs(2.0 * base::bessel_j1(x) / x));
}

}  // namespace

OffAxis off_axis(double across_rad, double up_rad) {
    return off_axis_of({std::sin(across_rad) * std::cos(up_rad), std::sin(up_rad),
                        std::cos(across_rad) * std::cos(up_rad)});
}

OffAxis off_axis_of(const glm::dvec3& way) {
    const double beside = way.x * way.x + way.y * way.y;
    if (beside == 0.0)
        return {.angle_rad = way.z < 0.0 ? base::kPi : 0.0, .sine = way.z < 0.0 ? 1.0 : 0.0};
    const double away = std::sqrt(beside);
    return {.angle_rad = std::atan2(away, way.z),
            .across_share = way.x * way.x / beside,
            .up_share = way.y * way.y / beside,
            .sine = way.z <= 0.0 ? 1.0 : away / std::sqrt(beside + way.z * way.z)};
}

double piston_db(double ka, double angle_rad) {
    return piston_level_db(ka * std::sin(std::min(angle_rad, 0.5 * base::kPi)));
}

double coverage_held_from_hz(double mouth_half_width_m, double half_angle_rad, const Air& air) {
    RL_ASSERT(mouth_half_width_m > 0.0 && half_angle_rad > 0.0);
    const double sine = std::sin(std::min(half_angle_rad, 0.5 * base::kPi));
    return kPistonEdgeX * air.sound_speed_m_s() / (2.0 * base::kPi * mouth_half_width_m * sine);
}

std::optional<Coverage> coverage_at(const room::Loudspeaker& loudspeaker,
                                    double frequency_hz,
                                    const Air& air) {
    if (loudspeaker.directivity == room::Directivity::horn)
        return horn_coverage(loudspeaker, frequency_hz, air);
    const double ka = wave_number(frequency_hz, air) * loudspeaker.piston_radius_m;
    if (ka < kPistonEdgeX) return std::nullopt;
    const double whole = 2.0 * std::asin(kPistonEdgeX / ka);
    return Coverage{whole, whole};
}

Beam::Beam(const room::Loudspeaker& loudspeaker, double frequency_hz, const Air& air)
    : piston_(loudspeaker.directivity == room::Directivity::piston),
      ka_(wave_number(frequency_hz, air) * loudspeaker.piston_radius_m) {
    if (piston_) return;
    const Coverage coverage = horn_coverage(loudspeaker, frequency_hz, air);
    edge_across_ = 4.0 / (coverage.across_rad * coverage.across_rad);
    edge_up_ = 4.0 / (coverage.up_rad * coverage.up_rad);
}

double Beam::level_db(const OffAxis& direction) const {
    if (piston_) return std::clamp(piston_level_db(ka_ * direction.sine), kDirectivityFloorDb, 0.0);
    const double per_square_radian =
        direction.across_share * edge_across_ + direction.up_share * edge_up_;
    const double edges = direction.angle_rad * direction.angle_rad * per_square_radian;
    return std::max(-kEdgeDb * edges, kDirectivityFloorDb);
}

double directivity_db(const room::Loudspeaker& loudspeaker,
                      double frequency_hz,
                      double across_rad,
                      double up_rad,
                      const Air& air) {
    return Beam(loudspeaker, frequency_hz, air).level_db(off_axis(across_rad, up_rad));
}

}  // namespace rakeline::sound
