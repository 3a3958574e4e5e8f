// SPDX-License-Identifier: MIT
#pragma once

#include "room/json_lines.hpp"
#include "room/problem_list.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace rakeline::room {

/// Kinds of files that say what they are by a first member with their version.
inline constexpr const char* kLayoutHead = "rakeline_layout";
inline constexpr const char* kLimitsHead = "rakeline_limits";
inline constexpr const char* kSeriesHead = "rakeline_series";

/// The root object of a file of kind `head`, version 1; nothing, with problems, where the text is
/// no JSON, holds another kind of file or is of another version.
std::optional<JsonNode> document_root(std::string_view json,
                                      const std::string& file_name,
                                      const char* head,
                                      ProblemList& problems);

}  // namespace rakeline::room
