// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "sight/rake.hpp"

#include <string>
#include <vector>

/// What a rake comes to, in sentences: the same for the verb and the window.
namespace rakeline::study {

/// "rows grouped in flights": a restriction in a list of them.
const char* restriction_title(sight::Restriction restriction);

/// Whether every row has its wanted C; if not, which restriction takes it and how much; or why
/// nothing can be built.
std::string rake_verdict(const sight::RakePlan& plan, base::UnitSystem system);

/// Cautions of the built floor: rows that need steps between them in the aisle, steps that differ
/// or are low, a floor too steep to be a ramp; and always that local codes go first. `step_most_m`
/// is the greatest riser of one step in an aisle.
std::vector<std::string> rake_cautions(const sight::RakePlan& plan,
                                       double step_most_m,
                                       base::UnitSystem system);

}  // namespace rakeline::study
