// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace rakeline::base {

/// The one of `names` that takes the fewest slips to reach from `word` (a letter added, left out or
/// changed, two neighbours exchanged); empty if none is near enough (more than half of the word
/// would change).
std::string nearest_name(std::string_view word, std::span<const std::string> names);

}  // namespace rakeline::base
