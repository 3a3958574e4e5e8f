// SPDX-License-Identifier: MIT
#pragma once

#include "study/rake_plan.hpp"

#include <string>

namespace rakeline::command {

/// A rake as plain text: the verdict, a table of rows (risers exact and built, aisle steps, floor,
/// C after each restriction), a table of restrictions (rise of the last row, least C and where,
/// what it costs in C), cautions. C of the first row, over another block, is shown and not judged.
std::string rake_text(const room::Layout& layout,
                      int block,
                      const sight::RakePlan& plan,
                      double step_most_m,
                      base::UnitSystem system);

/// The lowest sill, and the spacings, in a sentence or two.
std::string sill_text(const room::Layout& layout,
                      const sight::RakeOptions& options,
                      const std::optional<sight::ReverseRake>& found,
                      const sight::RakeRows& rows,
                      base::UnitSystem system);
std::string spacing_text(const room::Layout& layout,
                         const sight::RakeOptions& options,
                         const std::optional<sight::SpacingRange>& found,
                         const sight::RakeRows& rows,
                         base::UnitSystem system);

}  // namespace rakeline::command
