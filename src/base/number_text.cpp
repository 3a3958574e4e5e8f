// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <limits>

namespace rakeline::base {
namespace {

/// More digits than a double has, where the machine knows such a type.
using Wide = long double;

std::string_view trimmed(std::string_view text) {
    const auto is_space = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && is_space(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && is_space(text.back()))
        text.remove_suffix(1);
    return text;
}

template <class Number>
std::optional<Number> parse_as(std::string_view text) {
    text = trimmed(text);
    if (text.starts_with('+')) {
        text.remove_prefix(1);
        if (text.starts_with('-')) return std::nullopt;
    }
    Number value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

template <class Number, class... Form>
std::string to_text(Number value, Form... form) {
    char buffer[400];
    const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value, form...);
    RL_ASSERT(error == std::errc{});
    return {buffer, end};
}

/// Digits of the mantissa from the first that is not zero.
int significant_digits(std::string_view text) {
    int digits = 0;
    for (const char c : text.substr(0, text.find_first_of("eE"))) {
        const bool is_digit = c >= '0' && c <= '9';
        if (is_digit && (digits > 0 || c != '0')) ++digits;
    }
    return digits;
}

/// `value` to so many significant digits. Zeros at the end are dropped only where a double tells
/// the digits apart: beyond, they say that the number is meant to be this fine.
std::string rounded_text(Wide value, int digits) {
    if (digits <= std::numeric_limits<double>::max_digits10) {
        const auto rounded = parse_as<Wide>(to_text(value, std::chars_format::general, digits));
        RL_ASSERT(rounded);
        return to_text(*rounded);
    }
    const int exponent = static_cast<int>(std::floor(std::log10(std::abs(value))));
    const bool readable = exponent >= -6 && exponent < digits;
    return readable ? to_text(value, std::chars_format::fixed, digits - 1 - exponent)
                    : to_text(value, std::chars_format::scientific, digits - 1);
}

}  // namespace

std::string fixed_text(double value, int decimals) {
    RL_ASSERT(decimals >= 0 && decimals <= 15);
    if (std::isnan(value)) return "-";
    std::string out = to_text(value, std::chars_format::fixed, decimals);
    const bool is_zero = out.find_first_of("123456789in") == std::string::npos;
    if (is_zero && out.starts_with('-')) out.erase(0, 1);
    return out;
}

std::string exact_text(double value) {
    return to_text(value);
}

std::string plain_text(double value) {
    const double magnitude = std::abs(value);
    const bool readable = value == 0.0 || (magnitude >= 1e-6 && magnitude < 1e15);
    return readable ? to_text(value, std::chars_format::fixed) : to_text(value);
}

std::string significant_text(double value, int digits) {
    RL_ASSERT(digits >= 1 && digits <= 15);
    if (value == 0.0 || !std::isfinite(value)) return fixed_text(value, 0);
    const std::string scientific = to_text(value, std::chars_format::scientific, digits - 1);
    // The rounded value says how many digits stand before the point: 999.96 is 1000 to four.
    const auto rounded = parse_number(scientific);
    if (!rounded || std::abs(*rounded) < 1e-4 || std::abs(*rounded) >= 1e9) return scientific;
    const int whole_digits = static_cast<int>(std::floor(std::log10(std::abs(*rounded)))) + 1;
    return fixed_text(value, std::clamp(digits - whole_digits, 0, 15));
}

std::optional<double> parse_number(std::string_view text) {
    return parse_as<double>(text);
}

std::optional<double> parse_product(std::string_view text, double factor) {
    const auto number = parse_number(text);
    if (!number || significant_digits(text) <= std::numeric_limits<double>::max_digits10) {
        return number ? std::optional(*number * factor) : std::nullopt;
    }
    const auto wide = parse_as<Wide>(text);
    RL_ASSERT(wide);
    return static_cast<double>(*wide * static_cast<Wide>(factor));
}

std::string quotient_text(double value, double factor) {
    RL_ASSERT(std::isfinite(value) && factor != 0.0);
    const Wide quotient = static_cast<Wide>(value) / static_cast<Wide>(factor);
    for (int digits = 1; digits <= std::numeric_limits<Wide>::max_digits10; ++digits) {
        const std::string text = rounded_text(quotient, digits);
        if (parse_product(text, factor) == value) return text;
    }
    fail_assert("some text reads back as the value", __FILE__, __LINE__);
}

}  // namespace rakeline::base
