// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>

/// Number to text and back without the locale: the decimal sign is always a point.
namespace rakeline::base {

/// `value` with exactly `decimals` digits after the point; never "-0.00". NaN prints as "-".
std::string fixed_text(double value, int decimals);

/// The shortest text that reads back as the same double.
std::string exact_text(double value);

/// Reads back as the same double too, without an exponent where that stays readable: from 1e-6 up
/// to 1e15.
std::string plain_text(double value);

/// `value` with `digits` significant digits, without exponent between 1e-4 and 1e9.
std::string significant_text(double value, int digits);

/// The whole of `text` as a finite number (spaces around it are passed over), or nothing.
std::optional<double> parse_number(std::string_view text);

/// `text` as a number times `factor`. Up to 17 significant digits, which is all that a double
/// tells apart, this is parse_number(text) * factor to the bit; the digits beyond them count too.
/// Nothing where parse_number gives nothing.
std::optional<double> parse_product(std::string_view text, double factor);

/// The shortest text with parse_product(text, factor) == `value`. Where a factor spreads doubles
/// apart (degrees to radians), some values need more digits than a double holds, and get them.
std::string quotient_text(double value, double factor);

}  // namespace rakeline::base
