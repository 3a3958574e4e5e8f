// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>
#include <string>

namespace rakeline::study {

/// One object for a study with a crowd: {room, crowds, seed, women_fraction, taken_fraction,
/// precision, precision_reached, formats}; of each format {format, every_seat, seats_clear, seats},
/// where `every_seat` and each of `seats` (keyed by seat name) hold {chance, low, high, clear,
/// drawn}. Chances are from 0 to 1, intervals 95 %. `format`: only this one.
std::string crowd_json(const Study& study, std::optional<int> format = {});

}  // namespace rakeline::study
