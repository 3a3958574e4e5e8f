// SPDX-License-Identifier: MIT
#include "base/quantity_text.hpp"

#include "base/number_text.hpp"
#include "base/units.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <optional>

namespace rakeline::base {
namespace {

constexpr double kFt = kMetresPerFoot;

struct UnitRow {
    Unit unit;
    ShownScale metric;
    ShownScale imperial;
    const char* json;
};

const UnitRow& row(Unit unit) {
    static constexpr auto rows = std::to_array<UnitRow>({
        {Unit::metre, {1.0, 0.0, 2, "m"}, {1.0 / kFt, 0.0, 2, "ft"}, "m"},
        {Unit::millimetre, {1000.0, 0.0, 1, "mm"}, {1.0 / kMetresPerInch, 0.0, 3, "in"}, "m"},
        {Unit::micrometre, {1e6, 0.0, 1, "µm"}, {1e6, 0.0, 1, "µm"}, "m"},
        {Unit::square_metre, {1.0, 0.0, 2, "m²"}, {1.0 / (kFt * kFt), 0.0, 1, "ft²"}, "m2"},
        {Unit::cubic_metre, {1.0, 0.0, 0, "m³"}, {1.0 / (kFt * kFt * kFt), 0.0, 0, "ft³"}, "m3"},
        {Unit::radian, {1.0 / kRadPerDeg, 0.0, 2, "°"}, {1.0 / kRadPerDeg, 0.0, 2, "°"}, "deg"},
        {Unit::per_radian, {kRadPerDeg, 0.0, 1, "/°"}, {kRadPerDeg, 0.0, 1, "/°"}, "1/deg"},
        {Unit::second, {1000.0, 0.0, 2, "ms"}, {1000.0, 0.0, 2, "ms"}, "s"},
        {Unit::long_second, {1.0, 0.0, 2, "s"}, {1.0, 0.0, 2, "s"}, "s"},
        {Unit::lumen, {1.0, 0.0, 0, "lm"}, {1.0, 0.0, 0, "lm"}, "lm"},
        {Unit::lux, {1.0, 0.0, 1, "lx"}, {1.0 / kLuxPerFootCandle, 0.0, 2, "fc"}, "lx"},
        {Unit::cd_per_m2,
         {1.0, 0.0, 1, "cd/m²"},
         {1.0 / kCdm2PerFootLambert, 0.0, 2, "fL"},
         "cd/m2"},
        {Unit::lumen_per_watt, {1.0, 0.0, 1, "lm/W"}, {1.0, 0.0, 1, "lm/W"}, "lm/W"},
        {Unit::decibel, {1.0, 0.0, 1, "dB"}, {1.0, 0.0, 1, "dB"}, "dB"},
        {Unit::watt, {1.0, 0.0, 0, "W"}, {1.0, 0.0, 0, "W"}, "W"},
        {Unit::ampere, {1.0, 0.0, 1, "A"}, {1.0, 0.0, 1, "A"}, "A"},
        {Unit::volt, {1.0, 0.0, 1, "V"}, {1.0, 0.0, 1, "V"}, "V"},
        {Unit::hertz, {1.0, 0.0, 0, "Hz"}, {1.0, 0.0, 0, "Hz"}, "Hz"},
        {Unit::kg_per_m2,
         {1.0, 0.0, 2, "kg/m²"},
         {kFt * kFt / kKilogramsPerPound, 0.0, 3, "lb/ft²"},
         "kg/m2"},
        {Unit::celsius, {1.0, 0.0, 1, "°C"}, {1.8, 32.0, 1, "°F"}, "degC"},
        {Unit::pascal, {0.001, 0.0, 2, "kPa"}, {0.001, 0.0, 2, "kPa"}, "Pa"},
        {Unit::ratio, {1.0, 0.0, 3, ""}, {1.0, 0.0, 3, ""}, "1"},
        {Unit::fraction, {100.0, 0.0, 1, "%"}, {100.0, 0.0, 1, "%"}, "1"},
        {Unit::count, {1.0, 0.0, 0, ""}, {1.0, 0.0, 0, ""}, "1"},
        {Unit::hour, {1.0 / 3600.0, 0.0, 0, "h"}, {1.0 / 3600.0, 0.0, 0, "h"}, "s"},
        {Unit::kelvin, {1.0, 0.0, 1, "K"}, {1.8, 0.0, 1, "°F"}, "K"},
        {Unit::air_flow,
         {3600.0, 0.0, 0, "m³/h"},
         {60.0 / (kFt * kFt * kFt), 0.0, 0, "ft³/min"},
         "m3/s"},
        {Unit::money, {1.0, 0.0, 2, ""}, {1.0, 0.0, 2, ""}, "1"},
        {Unit::kilogram, {1.0, 0.0, 1, "kg"}, {1.0 / kKilogramsPerPound, 0.0, 1, "lb"}, "kg"},
    });
    return rows.at(static_cast<std::size_t>(unit));
}

/// Spellings that the parser takes beside the printed ones; factor to SI, offset after it.
struct Spelling {
    std::string_view text;
    Unit unit;
    double factor;
    double offset = 0.0;
};

constexpr auto kSpellings = std::to_array<Spelling>({
    {"m", Unit::metre, 1.0},
    {"cm", Unit::metre, 0.01},
    {"mm", Unit::metre, 0.001},
    {"µm", Unit::metre, 1e-6},
    {"um", Unit::metre, 1e-6},
    {"ft", Unit::metre, kFt},
    {"'", Unit::metre, kFt},
    {"in", Unit::metre, kMetresPerInch},
    {"\"", Unit::metre, kMetresPerInch},
    {"m²", Unit::square_metre, 1.0},
    {"m2", Unit::square_metre, 1.0},
    {"ft²", Unit::square_metre, kFt* kFt},
    {"ft2", Unit::square_metre, kFt* kFt},
    {"m³", Unit::cubic_metre, 1.0},
    {"m3", Unit::cubic_metre, 1.0},
    {"ft³", Unit::cubic_metre, kFt* kFt* kFt},
    {"ft3", Unit::cubic_metre, kFt* kFt* kFt},
    {"°", Unit::radian, kRadPerDeg},
    {"deg", Unit::radian, kRadPerDeg},
    {"rad", Unit::radian, 1.0},
    {"/°", Unit::per_radian, 1.0 / kRadPerDeg},
    {"/deg", Unit::per_radian, 1.0 / kRadPerDeg},
    {"s", Unit::second, 1.0},
    {"ms", Unit::second, 0.001},
    {"s", Unit::long_second, 1.0},
    {"ms", Unit::long_second, 0.001},
    {"lm", Unit::lumen, 1.0},
    {"klm", Unit::lumen, 1000.0},
    {"lx", Unit::lux, 1.0},
    {"fc", Unit::lux, kLuxPerFootCandle},
    {"cd/m²", Unit::cd_per_m2, 1.0},
    {"cd/m2", Unit::cd_per_m2, 1.0},
    {"fL", Unit::cd_per_m2, kCdm2PerFootLambert},
    {"lm/W", Unit::lumen_per_watt, 1.0},
    {"dB", Unit::decibel, 1.0},
    {"W", Unit::watt, 1.0},
    {"kW", Unit::watt, 1000.0},
    {"A", Unit::ampere, 1.0},
    {"V", Unit::volt, 1.0},
    {"Hz", Unit::hertz, 1.0},
    {"kHz", Unit::hertz, 1000.0},
    {"kg/m²", Unit::kg_per_m2, 1.0},
    {"kg/m2", Unit::kg_per_m2, 1.0},
    {"lb/ft²", Unit::kg_per_m2, kKilogramsPerPound / (kFt * kFt)},
    {"lb/ft2", Unit::kg_per_m2, kKilogramsPerPound / (kFt * kFt)},
    {"kg", Unit::kilogram, 1.0},
    {"g", Unit::kilogram, 0.001},
    {"lb", Unit::kilogram, kKilogramsPerPound},
    {"°C", Unit::celsius, 1.0},
    {"C", Unit::celsius, 1.0},
    {"°F", Unit::celsius, 1.0 / 1.8, -32.0 / 1.8},
    {"F", Unit::celsius, 1.0 / 1.8, -32.0 / 1.8},
    {"Pa", Unit::pascal, 1.0},
    {"kPa", Unit::pascal, 1000.0},
    {"%", Unit::fraction, 0.01},
    {"h", Unit::hour, 3600.0},
    {"K", Unit::kelvin, 1.0},
    {"°F", Unit::kelvin, 1.0 / 1.8},
    {"F", Unit::kelvin, 1.0 / 1.8},
    {"m³/h", Unit::air_flow, 1.0 / 3600.0},
    {"m3/h", Unit::air_flow, 1.0 / 3600.0},
    {"m³/s", Unit::air_flow, 1.0},
    {"m3/s", Unit::air_flow, 1.0},
    {"ft³/min", Unit::air_flow, kFt* kFt* kFt / 60.0},
    {"ft3/min", Unit::air_flow, kFt* kFt* kFt / 60.0},
});

Unit kind_of(Unit unit) {
    return unit == Unit::millimetre ? Unit::metre : unit;
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

/// Takes the leading number off `text`; nothing if it doesn't start with one.
std::optional<double> take_number(std::string_view& text) {
    std::size_t end = 0;
    const auto part_of_number = [&](std::size_t i) {
        const char c = text[i];
        const bool sign = (c == '-' || c == '+') && (i == 0 || text[i - 1] == 'e');
        const bool exponent =
            c == 'e' && i > 0 && i + 1 < text.size() &&
            (std::isdigit(static_cast<unsigned char>(text[i + 1])) || text[i + 1] == '-');
        return std::isdigit(static_cast<unsigned char>(c)) || c == '.' || sign || exponent;
    };
    while (end < text.size() && part_of_number(end))
        ++end;
    const auto value = parse_number(text.substr(0, end));
    if (value) text = trimmed(text.substr(end));
    return value;
}

/// Takes a fraction off `text`: "3/8" after "2 " in "2 3/8 in", or the "/8" after a whole number.
/// Nothing where what stands there is none, or divides by zero.
std::optional<double> take_fraction(std::string_view& text) {
    const auto digits = [](std::string_view t) {
        std::size_t n = 0;
        while (n < t.size() && std::isdigit(static_cast<unsigned char>(t[n])))
            ++n;
        return n;
    };
    const std::size_t above = digits(text);
    if (above == 0 || above >= text.size() || text[above] != '/') return std::nullopt;
    const std::size_t below = digits(text.substr(above + 1));
    const auto numerator = parse_number(text.substr(0, above));
    const auto denominator = parse_number(text.substr(above + 1, below));
    if (!numerator || !denominator || *denominator == 0.0) return std::nullopt;
    text = trimmed(text.substr(above + 1 + below));
    return *numerator / *denominator;
}

/// A number, a fraction, or a whole number and a fraction: "2.5", "3/8", "-2 3/8".
std::optional<double> take_mixed(std::string_view& text) {
    const bool negative = !text.empty() && text.front() == '-';
    std::string_view unsigned_text = text.substr(negative ? 1 : 0);
    if (const auto fraction = take_fraction(unsigned_text)) {
        text = unsigned_text;
        return negative ? -*fraction : *fraction;
    }
    const std::string_view before = text;
    const auto number = take_number(text);
    if (!number) return std::nullopt;
    const std::string_view taken = before.substr(0, before.size() - text.size());
    const bool whole = taken.find_first_of(".e") == std::string_view::npos;
    if (!whole || !taken.ends_with(' ')) return number;
    const auto fraction = take_fraction(text);
    if (!fraction) return number;
    return std::signbit(*number) ? *number - *fraction : *number + *fraction;
}

/// Takes the leading unit word off `text`: everything up to a space or a digit.
std::string_view take_word(std::string_view& text) {
    std::size_t end = 0;
    const auto part_of_word = [&](std::size_t i) {
        const char c = text[i];
        // The power of "ft2"; but in 5'2" the 2 starts the inches.
        const bool after_letter = i > 0 && (c == '2' || c == '3') &&
                                  std::isalpha(static_cast<unsigned char>(text[i - 1]));
        return c != ' ' && (!std::isdigit(static_cast<unsigned char>(c)) || after_letter);
    };
    while (end < text.size() && part_of_word(end))
        ++end;
    const std::string_view word = text.substr(0, end);
    text = trimmed(text.substr(end));
    return word;
}

double from_shown(double shown, Unit unit, UnitSystem system) {
    const ShownScale scale = shown_scale(unit, system);
    return (shown - scale.offset) / scale.factor;
}

Problem unreadable(std::string_view text, Unit unit, UnitSystem system) {
    const QuantityText example = quantity(from_shown(12.0, unit, system), unit, system);
    return {.file = {},
            .line = 0,
            .where = {},
            .what = "can't read '" + std::string(text) + "' as a value",
            .mend = "write a number and a unit, for example " + example.number +
                    (example.unit.empty() ? "" : " " + example.unit)};
}

/// Stray light and blacks lie far below one unit: such values show this many significant digits.
constexpr int kDimDigits = 3;

bool is_dim(double shown, Unit unit) {
    const bool light = unit == Unit::lux || unit == Unit::cd_per_m2;
    return light && shown != 0.0 && std::abs(shown) < 1.0;
}

}  // namespace

ShownScale shown_scale(Unit unit, UnitSystem system) {
    return system == UnitSystem::metric ? row(unit).metric : row(unit).imperial;
}

QuantityText quantity(double value_si, Unit unit, UnitSystem system, int extra_decimals) {
    const ShownScale scale = shown_scale(unit, system);
    const double shown = value_si * scale.factor + scale.offset;
    if (unit == Unit::hertz && shown >= 1000.0) return {significant_text(shown / 1000.0, 3), "kHz"};
    const int extra = unit == Unit::count ? 0 : extra_decimals;
    if (is_dim(shown, unit)) return {significant_text(shown, kDimDigits + extra), scale.unit};
    return {fixed_text(shown, scale.decimals + extra), scale.unit};
}

std::string quantity_text(double value_si, Unit unit, UnitSystem system, int extra_decimals) {
    const QuantityText parts = quantity(value_si, unit, system, extra_decimals);
    if (parts.unit.empty()) return parts.number;
    // The degree sign alone stands close to its number (SI Brochure, 9th edition, 5.4.3).
    return parts.number + (parts.unit == "°" ? "" : " ") + parts.unit;
}

Result<double> parse_quantity(std::string_view text, Unit unit, UnitSystem system) {
    std::string_view rest = trimmed(text);
    double total = 0.0;
    bool negative = false;
    for (int part = 0;; ++part) {
        const auto value = take_mixed(rest);
        if (!value) return unreadable(text, unit, system);
        if (part == 0) negative = std::signbit(*value);
        const std::string_view word = take_word(rest);
        double si = 0.0;
        if (word.empty()) {
            // Without a unit there is no telling what a second number would be of.
            if (part > 0 || !rest.empty()) return unreadable(text, unit, system);
            si = from_shown(*value, unit, system);
        } else {
            const auto found = std::find_if(
                kSpellings.begin(), kSpellings.end(),
                [&](const auto& s) { return s.text == word && s.unit == kind_of(unit); });
            if (found == kSpellings.end()) return unreadable(text, unit, system);
            si = *value * found->factor + found->offset;
        }
        // "-2 ft 6 in" is two and a half feet down, not one and a half.
        total += (part > 0 && negative) ? -si : si;
        if (!std::isfinite(total)) return unreadable(text, unit, system);
        if (rest.empty()) return total;
        if (kind_of(unit) != Unit::metre) return unreadable(text, unit, system);
    }
}

const char* json_unit(Unit unit) {
    return row(unit).json;
}

double json_value(double value_si, Unit unit) {
    if (unit == Unit::per_radian) return value_si * kRadPerDeg;
    return unit == Unit::radian ? degrees(value_si) : value_si;
}

}  // namespace rakeline::base
