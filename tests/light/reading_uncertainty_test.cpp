// SPDX-License-Identifier: MIT
#include "light/reading_uncertainty.hpp"

#include "support/check.hpp"

#include <cmath>
#include <random>

using namespace rakeline;
using light::UncertainFactor;
using tests::check_close;

namespace {

using Factors = std::vector<UncertainFactor>;

/// Some factors with shares up to a tenth.
Factors random_factors(std::mt19937& random) {
    std::uniform_real_distribution<double> share(0.0, 0.1);
    Factors factors(1 + random() % 9, {"u", "a factor", 0.0});
    for (UncertainFactor& factor : factors)
        factor.share = share(random);
    return factors;
}

constexpr int kTrials = 200000;

}  // namespace

TEST_SUITE("light/reading_uncertainty") {
    TEST_CASE(
        "a chain counts its own factors, a measured flux itself, and glass only where it is") {
        room::Projector p;
        p.kind = room::SourceKind::film;
        p.flux.entry = room::FluxEntry::chain;
        CHECK(light::reading_factors(p, true).size() == 9);
        CHECK(light::reading_factors(p, false).size() == 8);
        p.kind = room::SourceKind::digital;  // no shutter
        CHECK(light::reading_factors(p, true).size() == 8);
        p.flux.entry = room::FluxEntry::measured;
        const Factors measured = light::reading_factors(p, false);
        REQUIRE(measured.size() == 2);
        CHECK(measured[0].share == p.flux.tolerances.measured_flux);
        CHECK(measured[1].share == p.flux.tolerances.gain);
    }

    TEST_CASE("property: a factor more never makes a reading surer, and shares scale the whole") {
        std::mt19937 random(811);
        for (int i = 0; i < 100; ++i) {
            Factors factors = random_factors(random);
            const double before = light::combined_share(factors);
            Factors doubled = factors;
            for (UncertainFactor& factor : doubled)
                factor.share *= 2.0;
            check_close(light::combined_share(doubled), 2.0 * before,
                        tests::relative(1e-14, "rounding"));
            factors.push_back({"u", "one more", 0.03});
            CHECK(light::combined_share(factors) > before);
            CHECK(light::product_share(factors) >= light::combined_share(factors) * (1.0 - 1e-12));
        }
    }

    TEST_CASE("property: random draws agree with the exact spread of a product") {
        std::mt19937 random(812);
        for (int i = 0; i < 8; ++i) {
            const Factors factors = random_factors(random);
            const auto drawn =
                light::drawn_product(factors, kTrials, 100u + static_cast<unsigned>(i));
            const double exact = light::product_share(factors);
            // A standard deviation from n draws is off by s / sqrt(2 n) (1 in about 16,000 beyond
            // four of them), a mean by s / sqrt(n).
            check_close(drawn.share, exact,
                        tests::relative(4.0 / std::sqrt(2.0 * kTrials), "four sampling errors"));
            check_close(drawn.mean, 1.0,
                        tests::absolute(4.0 * exact / std::sqrt(kTrials), "four sampling errors"));
        }
    }

    TEST_CASE("property: many small factors make a lognormal reading, which leans upward") {
        // ln of the product has deviation s = sqrt(ln(1 + u^2)): 95 % lie between exp(-+1.96 s) of
        // the median exp(-s^2/2). Against 1 -+ 2u that lies up by about 2 u^2, less 0.04 u
        // for 1.96.
        std::mt19937 random(813);
        for (int i = 0; i < 8; ++i) {
            std::uniform_real_distribution<double> share(0.01, 0.04);
            Factors factors(9, {"u", "a factor", 0.0});
            for (UncertainFactor& factor : factors)
                factor.share = share(random);
            const auto drawn =
                light::drawn_product(factors, kTrials, 200u + static_cast<unsigned>(i));
            const double u = light::product_share(factors);
            const double s = std::sqrt(std::log(1.0 + u * u));
            // The logarithm of a normal factor leans down a little: nine of them shift both ends by
            // up to half of s^2 / 3.
            const auto near = [&](double sampling) {
                return tests::absolute(sampling + 0.2 * u * u,
                                       "four sampling errors of a 2.5 % quantile (2.7 s / sqrt n "
                                       "each), and factors that are normal, not lognormal");
            };
            const double sampling = 4.0 * 2.7 * s / std::sqrt(kTrials);
            check_close(drawn.low, std::exp(-0.5 * s * s - 1.959964 * s), near(sampling));
            check_close(drawn.high, std::exp(-0.5 * s * s + 1.959964 * s), near(1.2 * sampling));
            CHECK(drawn.low > 1.0 - light::kCoverage * light::combined_share(factors));
        }
    }

    TEST_CASE("the same seed draws the same, another one others, and exact factors nothing") {
        const Factors factors = {{"u", "a", 0.05}, {"u", "b", 0.02}};
        const auto first = light::drawn_product(factors, 4000, 7);
        CHECK(first.share == light::drawn_product(factors, 4000, 7).share);
        CHECK(first.share != light::drawn_product(factors, 4000, 8).share);
        const auto exact = light::drawn_product(Factors{{"u", "a", 0.0}}, 4000, 7);
        CHECK(exact.low == 1.0);
        CHECK(exact.high == 1.0);
        CHECK(light::combined_share(Factors{}) == 0.0);
    }
}
