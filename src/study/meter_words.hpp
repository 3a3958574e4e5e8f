// SPDX-License-Identifier: MIT
#pragma once

#include "study/meter_check.hpp"

#include <string>
#include <vector>

/// A meter check in plain sentences, for verb, window and JSON alike.
namespace rakeline::study {

/// "top left", "1.20 m across, -0.40 m up", with "from C4" where a row names its seat.
std::string meter_place_name(const MeterCheck& check, std::size_t reading, base::UnitSystem system);

/// How far a reading is from its fit, as a share of the fitted value: "+0.7 %"; "0.0 %" has no
/// sign.
std::string meter_residual_text(const light::FittedReading& reading);

/// What a part of the law is called, and its unit.
const char* meter_part_name(light::LawPart part);
base::Unit meter_part_unit(light::LawPart part);

/// "fitted", "held at the layout's value", "at its bound".
const char* meter_state_name(light::PartState state);
const char* meter_sign_name(light::MeterSign sign);

/// How well the fit stands, what it could not tell and why, readings that need a second look.
std::vector<std::string> meter_notes(const MeterCheck& check, base::UnitSystem system);

/// What the pattern suggests, one sentence or two a sign.
std::vector<std::string> meter_advice(const Study& study,
                                      const MeterCheck& check,
                                      base::UnitSystem system);

/// Usual cautions for whoever goes to the lamp with it; empty where there is nothing to mend.
std::vector<std::string> meter_cautions(const Study& study, const MeterCheck& check);

}  // namespace rakeline::study
