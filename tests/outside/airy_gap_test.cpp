// SPDX-License-Identifier: MIT
// Source: Airy's sum for light between two parallel mirrors of reflectance R (any optics text, from
// memory): transmission over its peak 1/(1 + F sin^2(delta/2)), F = 4 R/(1 - R)^2, peak over dip 1
// + F. Sound between screen and baffle is the same sum, with R the pressure that one pass leaves.
#include "base/units.hpp"
#include "sound/gap.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("outside/airy_gap") {
    TEST_CASE("golden: the ripple is Airy's function of the phase") {
        const sound::Air air;
        const sound::Gap gap{0.4, 0.0};
        const double spacing = sound::ripple_spacing_hz(gap, air);
        for (const double r : {0.04, 0.3, 0.7, 0.9}) {
            const double f_airy = 4.0 * r / ((1.0 - r) * (1.0 - r));
            const double peak = sound::gap_level_db(r, spacing, gap, air);
            for (double turn = 0.0; turn < 1.0; turn += 0.07) {
                const double sine = std::sin(base::kPi * turn);
                check_close(sound::gap_level_db(r, spacing * (2.0 + turn), gap, air) - peak,
                            -10.0 * std::log10(1.0 + f_airy * sine * sine),
                            absolute(1e-9, "rounding"));
            }
            check_close(sound::gap_ripple_db(r), 10.0 * std::log10(1.0 + f_airy),
                        absolute(1e-9, "rounding"));
        }
    }

    TEST_CASE("golden: two mirrors of 90 % pass 361 times as much at a peak as at a dip") {
        check_close(std::pow(10.0, 0.1 * sound::gap_ripple_db(0.9)), 361.0,
                    absolute(1e-9, "rounding"));
    }

    TEST_CASE("golden: a hard wall a metre behind has its peaks 172 Hz apart") {
        check_close(sound::ripple_spacing_hz({1.0, 0.0}, sound::Air{}), 171.6, printed_digits(1));
    }
}
