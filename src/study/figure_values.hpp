// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <vector>

/// Private to study/: evaluating the register over a computed study, and holding it to its limits.
namespace rakeline::study {

/// All figures of the register that have a value, with their verdicts.
std::vector<Figure> evaluate_figures(const Study& study);

/// Limits of the brief on this figure (some may apply at other bands or seats only).
std::vector<int> limits_on(const Study& study, const Figure& figure);

/// Whether one of limits_on holds the value at `index`.
bool applies_at(const Study& study, const Figure& figure, int limit, int index);

/// Mid-frequency of the band that value `index` of a per-band figure belongs to, Hz.
double band_frequency(const Figure& figure, int index);

Verdict verdict_of(double si, const room::Limit& limit);

/// How far `si` lies beyond the bound, as a share of the bound; <= 0 where it holds.
double excess_of(double si, const room::Limit& limit);

/// The findings of a study whose figures are evaluated.
std::vector<Finding> collect_findings(const Study& study);

}  // namespace rakeline::study
