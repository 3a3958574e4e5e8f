// SPDX-License-Identifier: MIT
#pragma once

#include "study/width_advice.hpp"

/// Picture-width advice in sentences: the same for verb, window and report.
namespace rakeline::study {

/// The widths that keep the limits for the share asked, or that none does: "2.39 may be 9.870 m to
/// 12.345 m wide: ...".
std::string width_verdict(const Study& study, const WidthAdvice& advice, base::UnitSystem system);

/// What follows it: the width now, and what would be missed beyond either end and where.
std::vector<std::string> width_reasons(const Study& study,
                                       const WidthAdvice& advice,
                                       base::UnitSystem system);

/// What was tried and what was not looked at: the same for all formats.
std::string width_scope(const Study& study, base::UnitSystem system);

}  // namespace rakeline::study
