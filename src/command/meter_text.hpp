// SPDX-License-Identifier: MIT
#pragma once

#include "study/meter_check.hpp"

#include <string>

namespace rakeline::command {

/// The parts with their errors, the readings with their residuals, notes, advice and cautions.
std::string meter_text(const study::Study& study,
                       const study::MeterCheck& check,
                       base::UnitSystem system);

}  // namespace rakeline::command
