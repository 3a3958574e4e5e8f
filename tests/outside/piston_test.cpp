// SPDX-License-Identifier: MIT
// Source: the rigid piston's directivity 2 J1(x)/x, x = ka sin(angle), as any acoustics text prints
// it, and half angles worked from it for a radius of 0.165 m.
#include "base/units.hpp"
#include "sound/directivity.hpp"
#include "support/check.hpp"

#include <cmath>
#include <optional>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// Where the level first falls to `level_db` along `at`, rising from 0 to `end`; nothing if never.
template <class Level>
std::optional<double> first_fall(double level_db, double end, const Level& at) {
    if (at(end) > level_db) return std::nullopt;
    double low = 0.0;
    double high = end;
    for (int i = 0; i < 100; ++i) {
        const double middle = 0.5 * (low + high);
        (at(middle) > level_db ? low : high) = middle;
    }
    return low;
}

/// At a quarter turn off the axis x is ka itself.
double level_at_x(double x) {
    return sound::piston_db(x, 0.5 * base::kPi);
}

}  // namespace

TEST_SUITE("outside/piston") {
    TEST_CASE("golden: x at half power, at half pressure and at the first null") {
        check_close(first_fall(-10.0 * std::log10(2.0), 3.0, level_at_x).value(), 1.6163,
                    printed_digits(4));
        check_close(first_fall(-20.0 * std::log10(2.0), 3.0, level_at_x).value(), 2.2151,
                    printed_digits(4));
        check_close(first_fall(-6.0, 3.0, level_at_x).value(), 2.2118, printed_digits(4));
        check_close(first_fall(-100.0, 3.8317, level_at_x).value(), 3.8317, printed_digits(4));
    }

    TEST_CASE("golden: half angles at -6.000 dB of a piston of 0.165 m") {
        const sound::Air air{.temperature_c = 20.0171};  // where sound goes 343.21 m/s
        room::Loudspeaker piston;
        piston.directivity = room::Directivity::piston;
        piston.piston_radius_m = 0.165;
        const auto half_angle_deg = [&](double frequency_hz, double end_rad) {
            const auto angle = first_fall(-6.0, end_rad, [&](double off) {
                return sound::directivity_db(piston, frequency_hz, off, 0.0, air);
            });
            return angle ? std::optional(base::degrees(*angle)) : std::nullopt;
        };
        check_close(air.sound_speed_m_s(), 343.21, printed_digits(2));
        check_close(half_angle_deg(1000.0, 1.2).value(), 47.07, printed_digits(2));
        check_close(half_angle_deg(2000.0, 0.6).value(), 21.48, printed_digits(2));
        check_close(half_angle_deg(4000.0, 0.3).value(), 10.55, printed_digits(2));
        CHECK_FALSE(half_angle_deg(500.0, 0.5 * base::kPi));
    }
}
