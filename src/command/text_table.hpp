// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

/// Tables in plain text, as the verbs print them.
namespace rakeline::command {

/// Columns that `text` takes on a terminal: one a code point.
std::size_t columns(const std::string& text);

/// Columns as wide as their widest cell, two spaces before each: the first `names` set left, the
/// others, numbers, right. Every row has as many cells as the first.
std::vector<std::string> table_lines(const std::vector<std::vector<std::string>>& rows,
                                     std::size_t names);

}  // namespace rakeline::command
