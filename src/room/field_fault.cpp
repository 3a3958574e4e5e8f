// SPDX-License-Identifier: MIT
#include "room/field_fault.hpp"

#include "base/number_text.hpp"
#include "base/units.hpp"
#include "room/utf8.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

using base::Unit;

constexpr std::size_t kLongestText = 10000;

std::string with_unit(const std::string& number, Unit unit) {
    const std::string name = base::json_unit(unit);
    return name == "1" ? number : number + " " + name;
}

/// The slip that the unit of a file invites, where people think in another one.
std::string unit_hint(Unit unit) {
    if (unit == Unit::millimetre) return " (the file holds metres: 50 mm is 0.05)";
    if (unit == Unit::fraction) return " (the file holds fractions: 50 % is 0.5)";
    return {};
}

/// "0 m is below the least allowed, 0.005 m".
std::string beyond(const std::string& value,
                   const std::string& least,
                   const std::string& most,
                   bool below) {
    return value + (below ? " is below the least allowed, " : " is above the most allowed, ") +
           (below ? least : most);
}

}  // namespace

std::string file_number(double value_si, Unit unit) {
    return unit == Unit::radian ? base::quotient_text(value_si, base::kRadPerDeg)
                                : base::plain_text(value_si);
}

std::optional<Fault> fault_of(const NumberField& field, double value_si) {
    if (value_si >= field.least && value_si <= field.most) return std::nullopt;
    const std::string least = with_unit(file_number(field.least, field.unit), field.unit);
    const std::string most = with_unit(file_number(field.most, field.unit), field.unit);
    const std::string mend = "give " + least + " to " + most + unit_hint(field.unit);
    if (!std::isfinite(value_si)) return Fault{"is not a finite number", mend};
    const std::string value = with_unit(file_number(value_si, field.unit), field.unit);
    return Fault{beyond(value, least, most, value_si < field.least), mend};
}

std::optional<Fault> fault_of(const IntegerField& field, double value) {
    const std::string least = std::to_string(field.least);
    const std::string most = std::to_string(field.most);
    const std::string mend = "give a whole number from " + least + " to " + most;
    const std::string shown = base::plain_text(value);
    if (value != std::floor(value)) return Fault{shown + " is no whole number", mend};
    if (value >= field.least && value <= field.most) return std::nullopt;
    return Fault{beyond(shown, least, most, value < field.least), mend};
}

std::optional<Fault> fault_of(const ListField& field, std::size_t count) {
    if (count <= field.most) return std::nullopt;
    return Fault{std::to_string(count) + " entries are more than a room may have",
                 "keep " + std::to_string(field.most) + " at most"};
}

std::optional<Fault> text_fault(std::string_view text) {
    if (text.size() > kLongestText) {
        return Fault{"a text of " + std::to_string(text.size()) + " bytes is too long",
                     "keep it within 10000"};
    }
    if (first_non_utf8(text)) return Fault{"is not UTF-8 text", "write it anew"};
    const auto is_control = [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return (byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7F;
    };
    if (std::ranges::any_of(text, is_control)) {
        return Fault{"holds a control character", "take it out"};
    }
    return std::nullopt;
}

std::string shortened(std::string text) {
    constexpr std::size_t kLongest = 40;
    std::ranges::replace_if(
        text, [](unsigned char c) { return c < 0x20 || c == 0x7F; }, '?');
    if (text.size() <= kLongest) return text;
    std::size_t end = kLongest;
    // Back to where a character starts.
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80)
        --end;
    return text.substr(0, end) + "…";
}

std::string quoted(const std::string& text) {
    return "\"" + shortened(text) + "\"";
}

std::string listed(std::span<const char* const> names) {
    std::string out;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) out += i + 1 == names.size() ? " or " : ", ";
        out += names[i];
    }
    return out;
}

}  // namespace rakeline::room
