// SPDX-License-Identifier: MIT
#pragma once

#include "study/width_advice.hpp"

#include <span>

namespace rakeline::study {

/// One object: {room, sill_m, widths}, `widths` a list of {format, share, wanted, seats, limits,
/// now_m, kept_now, least_m, most_m, why_most, ranges, kept_best, best_m, missed_best}; `ranges` of
/// {least_m, most_m, below, above}, these of {figure, bound ("least" or "most"), value, unit,
/// source, seats}.
std::string width_json(const Study& study, std::span<const WidthAdvice> all);

}  // namespace rakeline::study
