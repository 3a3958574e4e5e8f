// SPDX-License-Identifier: MIT
#pragma once

#include "study/perforation_choice.hpp"

#include <string>

namespace rakeline::study {

/// The trials as JSON, SI, angles in degrees: {room, sheets, turn?}, the sheet that hangs first.
std::string perforation_json(const Study& study, const SheetTrials& trials);

}  // namespace rakeline::study
