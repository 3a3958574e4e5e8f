// SPDX-License-Identifier: MIT
#pragma once

#include "study/curve_trials.hpp"

#include <string>

namespace rakeline::study {

/// One object: `room`, `projector`, `format`, `chord_m`, `now?`, `curves`, `tilts`,
/// `best_curve?` and `best_tilt?` (indices in these). A trial is {radius_m (0: flat), sagitta,
/// tilt_deg, clear_of_wall,
/// throw_m, side_ratio, side_seat, evenness, lowest_cdm2, highest_cdm2, crop,
/// uncovered, bow_m, keystone_vertical}. SI; shares 0 to 1.
std::string curve_json(const Study& study,
                       int projector,
                       int format,
                       const light::CurvatureHelp& help);

}  // namespace rakeline::study
