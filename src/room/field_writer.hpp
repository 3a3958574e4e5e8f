// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"

#include <functional>
#include <string>

namespace rakeline::room {

/// The JSON object with `head`: 1 first and then the members that `members` describes, in that
/// order, two spaces a level, each number with the fewest digits that read back as the same value.
/// Optional numbers that are unset are left out. Numbers must be finite.
std::string written_fields(const char* head, const std::function<void(FieldVisitor&)>& members);

}  // namespace rakeline::room
