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

double wave_number(double frequency_hz, const Air& air) {
    return 2.0 * base::kPi * frequency_hz / air.sound_speed_m_s();
}

/// Half coverage of one plane at this frequency, rad.
double half_coverage(double nominal_rad, double mouth_m, double frequency_hz, const Air& air) {
    const double half = 0.5 * nominal_rad;
    const double held_from = coverage_held_from_hz(mouth_m, half, air);
    return half * std::max(1.0, held_from / frequency_hz);
}

struct OffAxis {
    double across_rad = 0.0;
    double up_rad = 0.0;
};

double horn_db(const room::Loudspeaker& horn,
               double frequency_hz,
               const OffAxis& off_axis,
               const Air& air) {
    const double angle = off_axis_angle(off_axis.across_rad, off_axis.up_rad);
    // The part of the direction at right angles to the axis gives the roll.
    const double x = std::sin(off_axis.across_rad) * std::cos(off_axis.up_rad);
    const double y = std::sin(off_axis.up_rad);
    const double sine = std::hypot(x, y);
    const double cos_roll = sine > 0.0 ? x / sine : 1.0;
    const double sin_roll = sine > 0.0 ? y / sine : 0.0;
    const double mouth = horn.piston_radius_m;
    const double across =
        angle * cos_roll / half_coverage(horn.coverage_across_rad, mouth, frequency_hz, air);
    const double up =
        angle * sin_roll / half_coverage(horn.coverage_up_rad, mouth, frequency_hz, air);
    return -kEdgeDb * (across * across + up * up);
}

}  // namespace

double off_axis_angle(double across_rad, double up_rad) {
    const double forward = std::cos(across_rad) * std::cos(up_rad);
    const double side = std::sin(across_rad) * std::cos(up_rad);
    return std::atan2(std::hypot(side, std::sin(up_rad)), forward);
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

double directivity_db(const room::Loudspeaker& loudspeaker,
                      double frequency_hz,
                      double across_rad,
                      double up_rad,
                      const Air& air) {
    const bool piston = loudspeaker.directivity == room::Directivity::piston;
    const double level =
        piston ? piston_db(wave_number(frequency_hz, air) * loudspeaker.piston_radius_m,
                           off_axis_angle(across_rad, up_rad))
               : horn_db(loudspeaker, frequency_hz, {across_rad, up_rad}, air);
    return std::clamp(level, kDirectivityFloorDb, 0.0);
}

}  // namespace rakeline::sound
