// SPDX-License-Identifier: MIT
#pragma once

#include "study/curve_trials.hpp"

#include <string>

namespace rakeline::command {

/// Trials of the screen's curve and tilt as plain text: what is now, a table of each, the most even
/// of each and what it costs the picture, cautions.
std::string curve_text(const study::Study& study,
                       int projector,
                       int format,
                       const light::CurvatureHelp& help,
                       base::UnitSystem system);

}  // namespace rakeline::command
