// SPDX-License-Identifier: MIT
//
// Uncertainty of a product, against the worked example of a calibration standard: mass 100.28 mg
// (u 0.05 mg) of cadmium of purity 0.9999 (u 0.000058) in 100.0 ml (u 0.07 ml) makes 1002.7 mg/l
// with u = 0.9 mg/l, and U = 1.8 mg/l for k = 2.
// Source: EURACHEM/CITAC Guide CG 4, Quantifying Uncertainty in Analytical Measurement, example A1,
// from memory; method of JCGM 100:2008, 5.1.6.
#include "light/reading_uncertainty.hpp"
#include "support/check.hpp"

using namespace rakeline;

TEST_SUITE("outside/product uncertainty") {
    TEST_CASE("golden: the calibration standard's uncertainty, alone and expanded") {
        const light::UncertainFactor factors[] = {{"m", "mass", 0.05 / 100.28},
                                                  {"p", "purity", 0.000058 / 0.9999},
                                                  {"V", "volume", 0.07 / 100.0}};
        const double u = 1002.7 * light::combined_share(factors);
        tests::check_close(u, 0.9, tests::printed_digits(1));
        // The guide expands its rounded 0.9.
        tests::check_close(
            light::kCoverage * u, 1.8,
            tests::absolute(2.0 * 0.05 * (1.0 + 1e-9), "twice half a printed digit"));
    }
}
