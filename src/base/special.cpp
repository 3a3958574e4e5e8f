// SPDX-License-Identifier: MIT
#include "base/special.hpp"

#include "base/assert.hpp"

#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <math.h>  // NOLINT: j0 and j1 are POSIX, not in <cmath>

namespace rakeline::base {

// std::cyl_bessel_j, for any order, takes ten times as long; a study asks for a hundred thousand.
double bessel_j0(double x) {
    return ::j0(x);
}
double bessel_j1(double x) {
    return ::j1(x);
}

std::complex<double> bessel_tube_ratio(double a) {
    RL_ASSERT(a >= 0.0);
    // With z = a sqrt(-j), z^2 = -j a^2. The continued fraction of J1/J0 (Abramowitz and Stegun
    // 9.1.73, from memory): J1(z)/J0(z) = z/(2 - z^2/(4 - z^2/(6 - ...))), evaluated from the far
    // end; it converges for every z that is no zero of J0, and these z never are.
    const std::complex<double> z2(0.0, -a * a);
    const int terms = 40 + 2 * static_cast<int>(a);
    std::complex<double> tail(2.0 * (terms + 1), 0.0);
    for (int k = terms; k >= 1; --k)
        tail = 2.0 * k - z2 / tail;
    return 1.0 / tail;
}

double normal_quantile(double p) {
    RL_ASSERT(p > 0.0 && p < 1.0);
    // In doubles throughout: a long double is not the same thing on every processor.
    using Doubles = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
    return -std::sqrt(2.0) * boost::math::erfc_inv(2.0 * p, Doubles());
}

}  // namespace rakeline::base
