// SPDX-License-Identifier: MIT
#pragma once

#include "sight/rake_rows.hpp"

#include <optional>
#include <vector>

/// The search for a floor that can be built. Private to the rake solver.
namespace rakeline::sight {

/// What holds for the risers. `riser_most` and `floor_most_m` have one entry a row; those of the
/// first row are not read, but its floor must lie under its own.
struct RiserRules {
    double step_m = 0.01;              ///< risers are whole multiples of this, 0 and up
    std::vector<int> riser_most;       ///< in steps
    std::vector<double> floor_most_m;  ///< above datum
    int flight_rows = 1;               ///< rows that share a riser before it may change, at least
    std::optional<int> flights_most;   ///< risers that differ from the one before, with the first
};

/// A C that lies within this of the wanted one has it, and so with the other bounds: what doubles
/// lose in sums of risers must not cost a whole step. m
inline constexpr double kRakeRounding_m = 1e-9;

/// Risers in steps, one a row (the first row's is 0), of the floor whose last row lies lowest among
/// all floors that keep the rules and clear `wanted_c_m` on every line; of these the one whose rows
/// lie lowest in sum, then one with the fewest flights. Nothing where no floor does. A block with
/// fewer risers than flight_rows is one flight.
///
/// Dynamic programme from row to row over the state (riser, rows since it changed, flights). Of two
/// floors in the same state only the lower can be part of the best: what follows may rise alike,
/// and since t < 1 in C = t e + (1 - t) f - a, lowering both eyes by the same amount adds to C.
/// Exact, without rounding of heights; tests hold it equal to trying all floors.
std::optional<std::vector<int>> lowest_risers(const RakeRows& rows,
                                              const RiserRules& rules,
                                              double wanted_c_m);

/// States that the programme holds for these rules: time and memory go with it.
double search_size(const RakeRows& rows, const RiserRules& rules);

}  // namespace rakeline::sight
