// SPDX-License-Identifier: MIT
#pragma once

#include "study/perforation_choice.hpp"

#include <string>
#include <vector>

/// Sheets and beats in sentences: the same for verb, window, drawings and report.
namespace rakeline::study {

/// "1.20 mm holes, 5.00 mm staggered, rows turned by 15.00°", or "no holes".
std::string sheet_words(const room::Perforation& holes, base::UnitSystem system);

/// "beat seen", "holes seen", "unseen".
const char* sheet_sight_words(SheetSight sight);

/// The beat of a picture: its period, angle and contrast where it is seen most, and who sees it; or
/// why there is none.
std::string beat_words(const Study& study, int projector, int format, base::UnitSystem system);

/// What turning the rows of holes would do.
std::string turn_words(const SheetTrials& trials, base::UnitSystem system);

/// What the trials count and what they leave out.
std::vector<std::string> sheet_scope(const Study& study);

}  // namespace rakeline::study
