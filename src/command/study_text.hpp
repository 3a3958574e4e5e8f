// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>
#include <string>

namespace rakeline::command {

/// The study as plain text under the five subjects: a line a figure, a column a format; figures
/// with a value a seat or row show least and greatest. Then the findings.
std::string study_text(const study::Study& study,
                       std::optional<int> format,
                       base::UnitSystem system);

}  // namespace rakeline::command
