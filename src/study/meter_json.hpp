// SPDX-License-Identifier: MIT
#pragma once

#include "study/meter_check.hpp"

#include <string>

namespace rakeline::study {

/// One object: room, projector, format, seat?; `parts`, a list of {part, unit, value, layout_value,
/// state, standard_error?}; `correlation`, rows in the order of the parts; `readings`, in the order
/// given, {line?, point | across_m, up_m, seat?, spot_deg, unit, value, fitted, residual,
/// standard_uncertainty, masked_fraction}; chi_square, freedom, chance?; `signs`, and the sentences
/// `notes`, `advice` and `cautions`. SI.
std::string meter_json(const Study& study, const MeterCheck& check);

}  // namespace rakeline::study
