// SPDX-License-Identifier: MIT
#include "base/quantity_text.hpp"

#include "base/number_text.hpp"
#include "base/units.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline::base;
using rakeline::tests::absolute;
using rakeline::tests::check_close;
using rakeline::tests::relative;

namespace {

constexpr Unit kUnits[] = {
    Unit::metre,     Unit::millimetre, Unit::square_metre, Unit::cubic_metre, Unit::radian,
    Unit::second,    Unit::lumen,      Unit::lux,          Unit::cd_per_m2,   Unit::lumen_per_watt,
    Unit::decibel,   Unit::watt,       Unit::ampere,       Unit::volt,        Unit::hertz,
    Unit::kg_per_m2, Unit::celsius,    Unit::pascal,       Unit::ratio,       Unit::fraction,
    Unit::count,     Unit::hour,       Unit::long_second,  Unit::kelvin,      Unit::air_flow,
    Unit::money,     Unit::per_radian, Unit::kilogram,
};
constexpr UnitSystem kSystems[] = {UnitSystem::metric, UnitSystem::imperial};

double parsed(std::string_view text, Unit unit, UnitSystem system = UnitSystem::metric) {
    const auto result = parse_quantity(text, unit, system);
    INFO(std::string(text));
    REQUIRE(result);
    return *result;
}

/// Half of the last printed digit, in SI.
double half_digit(double value_si, Unit unit, UnitSystem system) {
    const ShownScale scale = shown_scale(unit, system);
    double digit = std::pow(10.0, -scale.decimals);
    const double shown = value_si * scale.factor + scale.offset;
    // From 1000 on, frequencies print three digits of kHz.
    if (unit == Unit::hertz && shown >= 1000.0) {
        digit = std::max(1000.0, std::pow(10.0, std::floor(std::log10(shown)))) / 100.0;
    }
    return 0.5 * digit / scale.factor;
}

}  // namespace

TEST_SUITE("base/quantity_text") {
    TEST_CASE("round trip: every unit of both systems reads back within half a printed digit") {
        std::mt19937 random(20261124);
        std::uniform_real_distribution<double> shown_in(-500.0, 5000.0);
        for (const UnitSystem system : kSystems) {
            for (const Unit unit : kUnits) {
                const ShownScale scale = shown_scale(unit, system);
                for (int i = 0; i < 400; ++i) {
                    const double value = (shown_in(random) - scale.offset) / scale.factor;
                    const std::string text = quantity_text(value, unit, system);
                    INFO("unit ", static_cast<int>(unit), ", ", text);
                    const double allowed = half_digit(value, unit, system) * (1.0 + 1e-9);
                    check_close(parsed(text, unit, system), value,
                                {allowed, 1e-12, "half of the last printed digit"});
                }
            }
        }
    }

    TEST_CASE("a bare number stands in the system's own unit, a named one in its own") {
        CHECK(parsed("3", Unit::metre) == 3.0);
        check_close(parsed("10", Unit::metre, UnitSystem::imperial), 3.048,
                    relative(1e-15, "exact by definition, one rounding"));
        CHECK(parsed("10 m", Unit::metre, UnitSystem::imperial) == 10.0);
        check_close(parsed("50", Unit::millimetre), 0.05, relative(1e-15, "one rounding"));
        check_close(parsed("2 in", Unit::millimetre), 0.0508, relative(1e-15, "one rounding"));
        check_close(parsed("68 °F", Unit::celsius), 20.0, absolute(1e-12, "two roundings"));
        check_close(parsed("14 fL", Unit::cd_per_m2), 14.0 * 3.4262591,
                    absolute(14.0 * 0.5e-7, "seven printed decimals of the unit"));
        // One pound is 0.45359237 kg by definition (1959 yard and pound agreement).
        check_close(parsed("100 lb", Unit::kilogram), 45.359237, relative(1e-15, "one rounding"));
        CHECK(quantity_text(45.359237, Unit::kilogram, UnitSystem::imperial) == "100.0 lb");
        check_close(parsed("3 %", Unit::fraction), 0.03, relative(1e-15, "one rounding"));
        check_close(parsed("90°", Unit::radian), 0.5 * kPi, relative(1e-15, "one rounding"));
        CHECK(parsed("2 kHz", Unit::hertz) == 2000.0);
    }

    TEST_CASE("dim light shows three significant digits and reads back") {
        CHECK(quantity_text(0.02346, Unit::cd_per_m2, UnitSystem::metric) == "0.0235 cd/m²");
        CHECK(quantity_text(0.0016, Unit::lux, UnitSystem::metric) == "0.00160 lx");
        CHECK(quantity_text(0.0, Unit::lux, UnitSystem::metric) == "0.0 lx");
        CHECK(quantity_text(1.04, Unit::lux, UnitSystem::metric) == "1.0 lx");
        check_close(parsed("0.0235 cd/m²", Unit::cd_per_m2), 0.0235, relative(1e-15, "rounding"));
    }

    TEST_CASE("feet and inches add up, and a minus holds for both") {
        const auto near = relative(1e-14, "a few roundings");
        check_close(parsed("40 ft 6 in", Unit::metre), 12.3444, near);
        check_close(parsed("5'2\"", Unit::metre), 62.0 * 0.0254, near);
        check_close(parsed("5'11.5\"", Unit::metre), 71.5 * 0.0254, near);
        check_close(parsed("-2 ft 6 in", Unit::metre), -0.762, near);
        check_close(parsed("350mm", Unit::metre), 0.35, near);
        check_close(parsed("25 ft2", Unit::square_metre), 2.322576, near);
    }

    TEST_CASE("inches come in fractions, alone, after whole ones and after feet") {
        const auto near = relative(1e-14, "a few roundings");
        check_close(parsed("2 3/8 in", Unit::metre), 2.375 * 0.0254, near);
        check_close(parsed("3/8 in", Unit::millimetre), 0.375 * 0.0254, near);
        check_close(parsed("5 ft 2 3/8 in", Unit::metre), 62.375 * 0.0254, near);
        check_close(parsed("5'2 3/8\"", Unit::metre), 62.375 * 0.0254, near);
        check_close(parsed("-2 3/8 in", Unit::metre), -2.375 * 0.0254, near);
        check_close(parsed("-3/8 in", Unit::metre), -0.375 * 0.0254, near);
        check_close(parsed("-5 ft 2 3/8 in", Unit::metre), -62.375 * 0.0254, near);
        check_close(parsed("2 3/8", Unit::millimetre, UnitSystem::imperial), 2.375 * 0.0254, near);
        check_close(parsed("1/2", Unit::metre), 0.5, near);
        check_close(parsed("6 1/2 ft", Unit::metre), 1.9812, near);
    }

    TEST_CASE("refuses: fractions that divide by nothing or have too many parts") {
        for (const char* text : {"3/0 in", "2 3/0 in", "3/ in", "/8 in", "3/8/2 in", "2.5 3/8 in",
                                 "1/2 3/8 in", "2 3/-8 in", "0/0", "2 3/8 5 in"}) {
            INFO("'", text, "'");
            CHECK_FALSE(parse_quantity(text, Unit::metre, UnitSystem::imperial));
        }
    }

    TEST_CASE("refuses: words that are no quantity of this kind, with an example") {
        for (const char* text : {"", "m", "five m", "5 kg", "5 s", "5 m 3", "5 5", "1e400 m", "nan",
                                 "5 m m", "12..3"}) {
            INFO("'", text, "'");
            const auto result = parse_quantity(text, Unit::metre, UnitSystem::metric);
            REQUIRE_FALSE(result);
            CHECK(result.problems().front().what ==
                  "can't read '" + std::string(text) + "' as a value");
            CHECK(result.problems().front().mend ==
                  "write a number and a unit, for example 12.00 m");
        }
        CHECK_FALSE(parse_quantity("3 s 4 s", Unit::second, UnitSystem::metric));
        CHECK_FALSE(parse_quantity("1e308 kW", Unit::watt, UnitSystem::metric));
    }

    TEST_CASE("golden: printed examples") {
        CHECK(quantity_text(12.345678, Unit::metre) == "12.35 m");
        CHECK(quantity_text(12.3444, Unit::metre, UnitSystem::imperial) == "40.50 ft");
        CHECK(quantity_text(0.0523, Unit::millimetre) == "52.3 mm");
        CHECK(quantity_text(radians(12.5), Unit::radian) == "12.50°");
        CHECK(quantity_text(0.0125, Unit::second) == "12.50 ms");
        CHECK(quantity_text(48.0, Unit::cd_per_m2, UnitSystem::imperial) == "14.01 fL");
        CHECK(quantity_text(1250.0, Unit::hertz) == "1.25 kHz");
        CHECK(quantity_text(500.0, Unit::hertz) == "500 Hz");
        CHECK(quantity_text(0.0326, Unit::fraction) == "3.3 %");
        CHECK(quantity_text(1.8, Unit::ratio) == "1.800");
        CHECK(quantity_text(96.0, Unit::count) == "96");
        CHECK(quantity_text(-0.001, Unit::metre) == "0.00 m");
    }

    TEST_CASE("machine output is SI with angles in degrees, units in ASCII") {
        CHECK(json_value(radians(90.0), Unit::radian) == 90.0);
        check_close(json_value(1.0 / radians(1.0), Unit::per_radian), 1.0,
                    relative(1e-15, "one rounding"));
        CHECK(json_value(0.05, Unit::millimetre) == 0.05);
        CHECK(json_value(0.25, Unit::fraction) == 0.25);
        CHECK(std::string(json_unit(Unit::radian)) == "deg");
        CHECK(std::string(json_unit(Unit::millimetre)) == "m");
        CHECK(std::string(json_unit(Unit::fraction)) == "1");
        for (const Unit unit : kUnits) {
            const std::string name = json_unit(unit);
            INFO(name);
            CHECK_FALSE(name.empty());
            CHECK(name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"
                                         "0123456789/") == std::string::npos);
        }
    }

    TEST_CASE("golden: the units of the other system") {
        // NIST SP 811 (2008), appendix B.8, values from memory: foot lambert 3.426 259 cd/m2, foot
        // candle 10.763 91 lx.
        check_close(kCdm2PerFootLambert, 3.426259, rakeline::tests::printed_digits(6));
        check_close(kLuxPerFootCandle, 10.76391, rakeline::tests::printed_digits(5));
        // The same: pound per square foot 4.882 428 kg/m2.
        check_close(parsed("1 lb/ft2", Unit::kg_per_m2), 4.882428,
                    rakeline::tests::printed_digits(6));
    }
}
