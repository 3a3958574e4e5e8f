// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace rakeline::room {

/// Index of the first byte that does not belong to well-formed UTF-8 (no overlong forms, no
/// surrogates, nothing over U+10FFFF: Unicode standard, table 3-7).
std::optional<std::size_t> first_non_utf8(std::string_view text);

}  // namespace rakeline::room
