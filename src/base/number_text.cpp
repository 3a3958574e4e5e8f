// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace rakeline::base {

std::string fixed_text(double value, int decimals) {
    RL_ASSERT(decimals >= 0 && decimals <= 15);
    if (std::isnan(value)) return "-";
    char buffer[400];
    const auto [end, error] =
        std::to_chars(buffer, buffer + sizeof buffer, value, std::chars_format::fixed, decimals);
    RL_ASSERT(error == std::errc{});
    std::string out(buffer, end);
    const bool is_zero = out.find_first_of("123456789in") == std::string::npos;
    if (is_zero && out.starts_with('-')) out.erase(0, 1);
    return out;
}

std::string exact_text(double value) {
    char buffer[64];
    const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value);
    RL_ASSERT(error == std::errc{});
    return {buffer, end};
}

std::string significant_text(double value, int digits) {
    RL_ASSERT(digits >= 1 && digits <= 15);
    if (value == 0.0 || !std::isfinite(value)) return fixed_text(value, 0);
    const double magnitude = std::abs(value);
    if (magnitude < 1e-4 || magnitude >= 1e9) {
        char buffer[64];
        const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, value,
                                                std::chars_format::scientific, digits - 1);
        RL_ASSERT(error == std::errc{});
        return {buffer, end};
    }
    const int whole_digits = static_cast<int>(std::floor(std::log10(magnitude))) + 1;
    return fixed_text(value, std::clamp(digits - whole_digits, 0, 15));
}

std::optional<double> parse_number(std::string_view text) {
    const auto is_space = [](char c) { return c == ' ' || c == '\t'; };
    while (!text.empty() && is_space(text.front()))
        text.remove_prefix(1);
    while (!text.empty() && is_space(text.back()))
        text.remove_suffix(1);
    if (text.starts_with('+')) text.remove_prefix(1);
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

}  // namespace rakeline::base
