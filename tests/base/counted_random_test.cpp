// SPDX-License-Identifier: MIT
#include "base/counted_random.hpp"

#include "base/special.hpp"
#include "support/check.hpp"

#include <array>
#include <cmath>
#include <set>

using namespace rakeline;
using base::CountedRandom;
using tests::absolute;
using tests::check_close;

TEST_SUITE("base/counted_random") {
    TEST_CASE("golden: a key of one word gives SplitMix64's own outputs") {
        // Outputs for seed 1234567 as many implementations test themselves with, from memory.
        const CountedRandom numbers{1234567};
        constexpr std::array<std::uint64_t, 5> kPublished{
            6457827717110365317U, 3203168211198807973U, 9817491932198370423U, 4593380528125082431U,
            16408922859458223821U};
        for (std::size_t i = 0; i < kPublished.size(); ++i)
            CHECK(numbers.bits(i) == kPublished[i]);
    }

    TEST_CASE("a number is the same in whatever order it is asked for") {
        const CountedRandom numbers{3, 14, 15};
        const std::uint64_t first = numbers.bits(9);
        (void)numbers.bits(2);
        CHECK(numbers.bits(9) == first);
        CHECK(CountedRandom{3, 14, 15}.bits(9) == first);
    }

    TEST_CASE("streams of neighbouring keys share no numbers") {
        std::set<std::uint64_t> seen;
        for (std::uint64_t seed = 0; seed < 10; ++seed)
            for (std::uint64_t crowd = 0; crowd < 20; ++crowd)
                for (std::uint64_t seat = 0; seat < 20; ++seat)
                    for (std::uint64_t i = 0; i < 6; ++i)
                        seen.insert(CountedRandom{seed, crowd, seat}.bits(i));
        CHECK(seen.size() == 10U * 20U * 20U * 6U);
    }

    TEST_CASE("property: uniform numbers fill (0, 1) evenly, and neighbours are not alike") {
        // By key's last word and by index: both are drawn along in a crowd.
        constexpr int kParts = 64;
        constexpr int kDraws = 64000;
        std::array<int, kParts> by_key{};
        std::array<int, kParts> by_index{};
        double together = 0.0;
        for (std::uint64_t k = 0; k < kDraws; ++k) {
            const double a = CountedRandom{1, 0, k}.uniform(0);
            const double b = CountedRandom{1, 0, k + 1}.uniform(0);
            REQUIRE(a > 0.0);
            REQUIRE(a < 1.0);
            together += (a - 0.5) * (b - 0.5);
            ++by_key[static_cast<std::size_t>(a * kParts)];
            ++by_index[static_cast<std::size_t>(CountedRandom{7}.uniform(k) * kParts)];
        }
        const double expected = static_cast<double>(kDraws) / kParts;
        const auto squares = [&](const auto& counts) {
            double sum = 0.0;
            for (const int count : counts)
                sum += (count - expected) * (count - expected) / expected;
            return sum;
        };
        // Chi square of 63 degrees: mean 63, deviation 11.2.
        CHECK(std::abs(squares(by_key) - 63.0) < 4.0 * 11.2);
        CHECK(std::abs(squares(by_index) - 63.0) < 4.0 * 11.2);
        check_close(12.0 * together / kDraws, 0.0,
                    absolute(4.0 / std::sqrt(kDraws), "four deviations of a correlation of 0"));
    }

    TEST_CASE("the quantile is odd about one half and rises") {
        CHECK(base::normal_quantile(0.5) == 0.0);
        double before = -100.0;
        for (double p = 1e-12; p < 0.5; p *= 1.7) {
            const double x = base::normal_quantile(p);
            CHECK(x > before);
            before = x;
            // 1 - p has lost p's last digits where p is small.
            check_close(base::normal_quantile(1.0 - p), -x, absolute(1e-4, "rounding of 1 - p"));
        }
    }
}
