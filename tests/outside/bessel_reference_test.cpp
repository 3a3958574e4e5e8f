// SPDX-License-Identifier: MIT
// Reference: GNU Scientific Library for real arguments; for the complex argument of a viscous tube
// Bessel's integral J_n(z) = 1/pi int_0^pi cos(n t - z sin t) dt by the trapezoidal rule, which
// converges faster than any power for this periodic integrand.
#include "base/special.hpp"
#include "base/units.hpp"
#include "sound/directivity.hpp"
#include "support/check.hpp"

#include <cmath>
#include <complex>
#include <gsl/gsl_sf_bessel.h>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

std::complex<double> bessel_integral(int n, std::complex<double> z) {
    constexpr int kSteps = 4000;
    std::complex<double> sum = 0.0;
    for (int i = 0; i < kSteps; ++i) {
        const double t = 2.0 * base::kPi * i / kSteps;
        sum += std::cos(static_cast<double>(n) * t - z * std::sin(t));
    }
    return sum / static_cast<double>(kSteps);
}

}  // namespace

TEST_SUITE("outside/bessel_reference") {
    TEST_CASE("golden: J0 and J1 agree with GSL") {
        for (double x = 0.0; x < 250.0; x += 0.37) {
            INFO("x = ", x);
            const auto tolerance = absolute(1e-13, "rounding of arguments up to 250");
            check_close(base::bessel_j0(x), gsl_sf_bessel_J0(x), tolerance);
            check_close(base::bessel_j1(x), gsl_sf_bessel_J1(x), tolerance);
        }
    }

    TEST_CASE("golden: the piston is 2 J1(x)/x of GSL") {
        for (const double ka : {0.01, 0.3, 1.5, 7.0, 40.0}) {
            for (double angle = 0.02; angle < 1.57; angle += 0.03) {
                const double x = ka * std::sin(angle);
                const double expected = std::abs(2.0 * gsl_sf_bessel_J1(x) / x);
                INFO("ka ", ka, ", angle ", angle);
                check_close(std::pow(10.0, sound::piston_db(ka, angle) / 20.0), expected,
                            absolute(1e-13, "rounding, as a ratio of pressures"));
            }
        }
    }

    TEST_CASE("golden: the tube's ratio agrees with Bessel's integral") {
        const std::complex<double> turn = std::polar(1.0, -0.25 * base::kPi);
        // 400 is a 10 mm hole at 16 kHz, the widest that a layout may hold.
        for (const double a :
             {0.01, 0.1, 0.7, 1.0, 2.4, 5.0, 9.0, 17.0, 33.0, 60.0, 150.0, 400.0}) {
            INFO("a = ", a);
            const std::complex<double> z = a * turn;
            const std::complex<double> expected =
                bessel_integral(1, z) / (z * bessel_integral(0, z));
            const std::complex<double> ours = base::bessel_tube_ratio(a);
            check_close(std::abs(ours - expected) / std::abs(expected), 0.0,
                        absolute(1e-10, "what special.hpp promises"));
        }
        CHECK(base::bessel_tube_ratio(0.0) == 0.5);
    }
}
