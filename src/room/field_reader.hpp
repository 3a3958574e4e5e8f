// SPDX-License-Identifier: MIT
#pragma once

#include "room/fields.hpp"
#include "room/json_lines.hpp"
#include "room/problem_list.hpp"

#include <functional>
#include <string>

namespace rakeline::room {

/// Reads the members that `members` describes out of the JSON object `root`. A missing member
/// leaves its value as it is. `head` is the one member of the root that is no field: the version.
void read_fields(const JsonNode& root,
                 const char* head,
                 ProblemList& problems,
                 const std::function<void(FieldVisitor&)>& members);

}  // namespace rakeline::room
