// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>
#include <string>

namespace rakeline::command {

/// The crowd of a room with seats as text: a sentence a format, then the seat of each row that is
/// least likely clear, and the least likely of all. `format`: only this one.
std::string crowd_text(const study::Study& study, std::optional<int> format);

}  // namespace rakeline::command
