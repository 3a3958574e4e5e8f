// SPDX-License-Identifier: MIT
#pragma once

#include "study/change_book.hpp"

#include <string>

namespace rakeline::command {

/// The book as text: the sheets, formats as columns; then the moves, a numbered list a change, its
/// cautions under it; then two machines side by side, if it holds them.
std::string change_text(const study::Study& study,
                        const study::ChangeBook& book,
                        base::UnitSystem system);

}  // namespace rakeline::command
