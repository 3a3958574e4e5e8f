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

/// `value` with `digits` significant digits, without exponent between 1e-4 and 1e9.
std::string significant_text(double value, int digits);

/// The whole of `text` as a finite number (spaces around it are passed over), or nothing.
std::optional<double> parse_number(std::string_view text);

}  // namespace rakeline::base
