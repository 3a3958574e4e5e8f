// SPDX-License-Identifier: MIT
#pragma once

#include "study/perforation_choice.hpp"

#include <string>

namespace rakeline::command {

/// The trials as a table, the beats of every digital picture, and what turning would do.
std::string perforation_text(const study::Study& study,
                             const study::SheetTrials& trials,
                             base::UnitSystem system);

}  // namespace rakeline::command
