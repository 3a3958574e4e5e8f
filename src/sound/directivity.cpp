// SPDX-License-Identifier: MIT
#include "sound/directivity.hpp"

#include "base/assert.hpp"
#include "base/special.hpp"
#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

/// Half the pressure: 20 lg 2 dB; and the x where a piston's pressure has fallen to that.
constexpr double kEdgeDb = 6.020599913279624;
constexpr double kPistonEdgeX = 2.2150893677242323;

/// Half coverage of one plane at this frequency, rad.
double half_coverage(double nominal_rad, double mouth_m, double frequency_hz, const Air& air) {
    const double half = 0.5 * nominal_rad;
    const double held_from = coverage_held_from_hz(mouth_m, half, air);
    return half * std::max(1.0, held_from / frequency_hz);
}

}  // namespace

OffAxis off_axis(double across_rad, double up_rad) {
    // The direction as a unit vector: x and y at right angles to the axis, z along it.
    const double x = std::sin(across_rad) * std::cos(up_rad);
    const double y = std::sin(up_rad);
    const double z = std::cos(across_rad) * std::cos(up_rad);
    const double sine_squared = x * x + y * y;
    if (sine_squared == 0.0) return {.angle_rad = z < 0.0 ? base::kPi : 0.0};
    return {.angle_rad = std::atan2(std::sqrt(sine_squared), z),
            .across_share = x * x / sine_squared,
            .up_share = y * y / sine_squared};
}

double piston_db(double ka, double angle_rad) {
    const double x = ka * std::sin(std::min(angle_rad, 0.5 * base::kPi));
    // Below this 2 J1(x)/x is 1 - x^2/8 to the last bit.
    if (x < 1e-4) return 20.0 * std::log10(1.0 - x * x / 8.0);
    return 20.0 * std::log10(std::abs(2.0 * base::bessel_j1(x) / x));
}

double coverage_held_from_hz(double mouth_half_width_m, double half_angle_rad, const Air& air) {
    RL_ASSERT(mouth_half_width_m > 0.0 && half_angle_rad > 0.0);
    const double sine = std::sin(std::min(half_angle_rad, 0.5 * base::kPi));
    return kPistonEdgeX * air.sound_speed_m_s() / (2.0 * base::kPi * mouth_half_width_m * sine);
}

Beam::Beam(const room::Loudspeaker& loudspeaker, double frequency_hz, const Air& air)
    : piston_(loudspeaker.directivity == room::Directivity::piston),
      ka_(2.0 * base::kPi * frequency_hz / air.sound_speed_m_s() * loudspeaker.piston_radius_m),
      half_across_(half_coverage(
          loudspeaker.coverage_across_rad, loudspeaker.piston_radius_m, frequency_hz, air)),
      half_up_(half_coverage(
          loudspeaker.coverage_up_rad, loudspeaker.piston_radius_m, frequency_hz, air)) {}

double Beam::level_db(const OffAxis& direction) const {
    if (piston_) return std::clamp(piston_db(ka_, direction.angle_rad), kDirectivityFloorDb, 0.0);
    const double per_square_radian = direction.across_share / (half_across_ * half_across_) +
                                     direction.up_share / (half_up_ * half_up_);
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
