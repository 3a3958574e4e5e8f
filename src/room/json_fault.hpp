// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"

#include <optional>
#include <string>
#include <string_view>

/// Sentences for text that is no JSON.
namespace rakeline::room {

/// The first place where `text` is no UTF-8.
std::optional<base::Problem> encoding_fault(std::string_view text, const std::string& file_name);

/// What is wrong at the last of the first `position` characters, where the parser stopped; a
/// position beyond the text says that it ended too early.
base::Problem syntax_fault(std::string_view text,
                           std::size_t position,
                           const std::string& file_name);

/// The number or word that ends at or around character `position` (1-based).
std::string word_before(std::string_view text, std::size_t position);

}  // namespace rakeline::room
