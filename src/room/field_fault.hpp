// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Whether a single value suits its field, and the sentence where it doesn't: the same words for
/// files and for the window's edits.
namespace rakeline::room {

struct Fault {
    std::string what;
    std::string mend;
};

/// As files hold it: SI, angles in degrees, such that reading the text gives the same value again.
/// The value must be finite.
std::string file_number(double value_si, base::Unit unit);

std::optional<Fault> fault_of(const NumberField& field, double value_si);

/// The value as a double, since a file may hold one beyond an int.
std::optional<Fault> fault_of(const IntegerField& field, double value);

std::optional<Fault> fault_of(const ListField& field, std::size_t count);

/// Text that could not be written, shown or spoken: not UTF-8, control signs, over 10,000 bytes.
std::optional<Fault> text_fault(std::string_view text);

/// Text of a file as a sentence can hold it: in one line and not too long; and the same in quotes.
std::string shortened(std::string text);
std::string quoted(const std::string& text);

/// "a", "a or b", "a, b or c".
std::string listed(std::span<const char* const> names);

}  // namespace rakeline::room
