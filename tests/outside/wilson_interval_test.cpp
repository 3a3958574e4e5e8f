// SPDX-License-Identifier: MIT
// Reference: Newcombe, "Two-sided confidence intervals for the single proportion", Statistics in
// Medicine 17 (1998), table I, method 3 (score, no continuity correction), from memory;
// Boost.Math's binomial distribution for how often the interval holds the truth; GSL for the normal
// quantile.
#include "base/special.hpp"
#include "sight/chance.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <gsl/gsl_cdf.h>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// The chance that the interval from `n` draws holds the true chance `p`.
double coverage(int n, double p) {
    const boost::math::binomial counts(n, p);
    double sum = 0.0;
    for (int k = 0; k <= n; ++k) {
        const sight::Interval i = sight::wilson_interval({k, n});
        if (i.low <= p && p <= i.high) sum += boost::math::pdf(counts, k);
    }
    return sum;
}

}  // namespace

TEST_SUITE("outside/wilson_interval") {
    TEST_CASE("golden: Newcombe's four examples") {
        struct Example {
            int clear, drawn;
            double low, high;
        };
        for (const Example& e : {Example{81, 263, 0.2553, 0.3662}, Example{15, 148, 0.0624, 0.1605},
                                 Example{0, 20, 0.0, 0.1611}, Example{1, 29, 0.0061, 0.1718}}) {
            INFO(e.clear, " of ", e.drawn);
            const sight::Interval i = sight::wilson_interval({e.clear, e.drawn});
            check_close(i.low, e.low, printed_digits(4));
            check_close(i.high, e.high, printed_digits(4));
        }
    }

    TEST_CASE("golden: by binomial probabilities the interval holds the truth 95 times in 100") {
        for (const int n : {100, 400, 2400}) {
            double mean = 0.0;
            int count = 0;
            for (double p = 0.02; p < 0.985; p += 0.01) {
                mean += coverage(n, p);
                ++count;
                // Near the ends few counts are likely, and the steps between them show.
                CHECK(coverage(n, p) > 0.91);
            }
            check_close(mean / count, 0.95, absolute(0.004, "counts are whole numbers"));
        }
    }

    TEST_CASE("golden: it lies within the exact interval of Clopper and Pearson") {
        using Binomial = boost::math::binomial;
        for (const int n : {100, 1000}) {
            for (int k = 10; k <= n - 10; k += 10) {
                INFO(k, " of ", n);
                const sight::Interval i = sight::wilson_interval({k, n});
                CHECK(i.low >= Binomial::find_lower_bound_on_p(n, k, 0.025));
                CHECK(i.high <= Binomial::find_upper_bound_on_p(n, k, 0.025));
            }
        }
    }

    TEST_CASE("property: the interval holds the share, narrows with draws, and mirrors") {
        for (const int n : {1, 7, 100, 5000}) {
            for (int k = 0; k <= n; k += std::max(1, n / 13)) {
                const sight::Chance chance{k, n};
                const sight::Interval i = sight::wilson_interval(chance);
                CHECK(i.low <= chance.share());
                CHECK(chance.share() <= i.high);
                CHECK(i.low >= 0.0);
                CHECK(i.high <= 1.0);
                CHECK(sight::wilson_interval({4 * k, 4 * n}).half_width() < i.half_width());
                check_close(sight::wilson_interval({n - k, n}).low, 1.0 - i.high,
                            absolute(1e-12, "rounding"));
            }
        }
    }

    TEST_CASE("golden: the normal quantile agrees with GSL") {
        for (double p = 1e-10; p < 1.0; p = p < 0.01 ? p * 3.0 : p + 0.01) {
            INFO("p = ", p);
            check_close(base::normal_quantile(p), gsl_cdf_ugaussian_Pinv(p),
                        absolute(1e-10, "two approximations in doubles"));
        }
    }
}
