// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <bit>
#include <cstdint>
#include <limits>
#include <random>

using namespace rakeline::base;

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Any finite double, small and large alike.
double any_double(std::mt19937_64& random) {
    for (;;) {
        const double value = std::bit_cast<double>(static_cast<std::uint64_t>(random()));
        if (std::isfinite(value)) return value;
    }
}

}  // namespace

TEST_SUITE("base/number_text") {
    TEST_CASE("fixed text has its decimals and never a negative zero") {
        CHECK(fixed_text(12.345, 2) == "12.35");
        CHECK(fixed_text(-0.004, 2) == "0.00");
        CHECK(fixed_text(-0.006, 2) == "-0.01");
        CHECK(fixed_text(0.5, 0) == "0");  // half to even
        CHECK(fixed_text(1e20, 1) == "100000000000000000000.0");
        CHECK(fixed_text(kNan, 2) == "-");
        CHECK(fixed_text(-kInfinity, 2) == "-inf");
    }

    TEST_CASE("significant text rounds before it counts its digits") {
        CHECK(significant_text(1234.5, 3) == "1234");
        CHECK(significant_text(12.345, 3) == "12.3");
        CHECK(significant_text(0.0012345, 3) == "0.00123");
        CHECK(significant_text(999.96, 4) == "1000");
        CHECK(significant_text(0.099996, 4) == "0.1000");
        CHECK(significant_text(-42.0, 2) == "-42");
        CHECK(significant_text(0.0, 3) == "0");
        CHECK(significant_text(2.5e-5, 2) == "2.5e-05");
        CHECK(significant_text(1e9, 2) == "1.0e+09");
    }

    TEST_CASE("plain text has no exponent where people would not write one") {
        CHECK(plain_text(500000.0) == "500000");
        CHECK(plain_text(13.68e-6) == "0.00001368");
        CHECK(plain_text(0.1) == "0.1");
        CHECK(plain_text(0.0) == "0");
        CHECK(plain_text(1e15) == "1e+15");
    }

    TEST_CASE("parsing takes the whole of a text and only finite numbers") {
        CHECK(parse_number("12.5") == 12.5);
        CHECK(parse_number(" \t-3e2 ") == -300.0);
        CHECK(parse_number("+7") == 7.0);
        for (const char* text : {"", " ", "+", "-", "+-7", "++7", "1,5", "1.5x", "0x10", "1 2",
                                 "nan", "inf", "-inf", "1e999", "."}) {
            INFO("'", text, "'");
            CHECK_FALSE(parse_number(text));
            CHECK_FALSE(parse_product(text, 2.0));
        }
    }

    TEST_CASE("round trip: exact and plain text read back to the bit") {
        std::mt19937_64 random(1);
        for (int i = 0; i < 20000; ++i) {
            const double value = any_double(random);
            const auto exact = parse_number(exact_text(value));
            const auto plain = parse_number(plain_text(value));
            const bool same = exact == value && plain == value;
            if (!same) CHECK(exact_text(value) == plain_text(value));
            REQUIRE(same);
        }
    }

    TEST_CASE("a product of few digits is the product of the numbers") {
        std::mt19937_64 random(2);
        std::uniform_real_distribution<double> degrees_in(-180.0, 180.0);
        for (int i = 0; i < 20000; ++i) {
            const double value = degrees_in(random);
            REQUIRE(parse_product(exact_text(value), kRadPerDeg) == radians(value));
        }
    }

    TEST_CASE("round trip: 100000 random angles pass through degrees to the bit") {
        std::mt19937_64 random(3);
        std::uniform_real_distribution<double> radians_in(-kPi, kPi);
        int beyond_doubles = 0;
        for (int i = 0; i < 100000; ++i) {
            const double angle = radians_in(random);
            const std::string text = quotient_text(angle, kRadPerDeg);
            if (parse_product(text, kRadPerDeg) != angle) {
                INFO("angle ", exact_text(angle), " as ", text);
                REQUIRE(parse_product(text, kRadPerDeg) == angle);
            }
            // What dividing and multiplying doubles would lose.
            if (radians(degrees(angle)) != angle) ++beyond_doubles;
        }
        CHECK(beyond_doubles > 1000);
    }

    TEST_CASE("round trip: quotients of every size, down to the smallest numbers") {
        std::mt19937_64 random(4);
        for (int i = 0; i < 20000; ++i) {
            const double value = any_double(random) * 1e-10;
            REQUIRE(parse_product(quotient_text(value, kRadPerDeg), kRadPerDeg) == value);
        }
        for (const double value : {0.0, 5e-324, 2.2e-308, -1e-310}) {
            CHECK(parse_product(quotient_text(value, kRadPerDeg), kRadPerDeg) == value);
        }
    }

    TEST_CASE("a quotient is as short as what a person typed") {
        for (const char* typed : {"20", "-2.5", "0.1", "12.35", "180", "33.333", "1e-05"}) {
            const auto value = parse_product(typed, kRadPerDeg);
            REQUIRE(value);
            CHECK(quotient_text(*value, kRadPerDeg) == typed);
        }
    }
}
