// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "sight/rake_rows.hpp"

#include <optional>
#include <string>
#include <vector>

/// The floor that gives every row of a block the wanted C: exact, then as it can be built.
namespace rakeline::sight {

/// Floors by the recursion, one a row, the first row's as it is:
///
///     y[n+1] = (y[n] + C) x[n+1]/x[n]     [m]
///       y  eye over the point of focus     x  eye to the point of focus, level     C  wanted
///
/// for the highest of what every line of a row asks for: of all formats that with the worst lower
/// edge decides, found row by row. Where the eyes stay far enough under the picture a row may lie
/// lower than the one in front. The lowest floor there is: no row can lie lower and keep its C.
/// Source: EN 13200-1 form (University of Bath sight-line worksheet). Closed form for equal spacing
/// T and one focus: y[n]/x[n] = y[0]/x[0] + C sum over k < n of 1/x[k].
std::vector<double> exact_floor(const RakeRows& rows, double wanted_c_m);

/// What is asked of a floor. Lengths in m; unset: not restricted.
struct RakeOptions {
    double wanted_c_m = 0.12;  ///< 0 to 0.5
    RakeOver over = RakeOver::row_in_front;
    double riser_step_m = 0.01;          ///< risers are whole multiples of it, 0 and up
    int flight_rows = 1;                 ///< rows that share a riser, at least
    std::optional<int> flights_most;     ///< how many flights of one riser there may be
    std::optional<double> riser_most_m;  ///< of a row over the one in front
    std::optional<double>
        slope_most_rad;                ///< of a riser over the spacing of its row, cross aisle in
    std::optional<double> headroom_m;  ///< floor to ceiling, at least
    std::optional<double> beam_headroom_m;  ///< floor to the lower side of every beam, at least
    bool operator==(const RakeOptions&) const = default;
};

/// The greatest riser that a layout can hold, m: the bound where none is given.
inline constexpr double kGreatestRiser_m = 1.5;

/// What is wrong with the options, each with the name of its member; none where they can be used.
struct OptionFault {
    std::string option;
    std::string what;
    std::string mend;
};
std::vector<OptionFault> option_faults(const RakeOptions& options);

/// Restrictions in the order in which they are laid on the floor, each on top of those before.
enum class Restriction { exact, step, flights, riser, slope, ceiling, beam };

/// "rounded to the step", as a table's head.
const char* restriction_name(Restriction restriction);

/// The floor under all restrictions up to one.
///
/// Best means: every line clears the wanted C, and of all floors that do so the last row lies
/// lowest; of these the one whose rows lie lowest in sum, then one with the fewest flights. Where
/// no floor does, the greatest C is taken that every row can have at once (found to a micrometre),
/// and of the floors that give it again the lowest: `meets` is false.
struct RakeStage {
    Restriction restriction = Restriction::exact;
    std::vector<double> floor_m;                  ///< one a row; empty: nothing can be built
    std::vector<std::optional<RowSight>> sights;  ///< one a row
    std::optional<int> least_row;                 ///< row with the least C over what it wants
    bool meets = true;                            ///< every row clears what it wants

    double rise_m() const { return floor_m.empty() ? 0.0 : floor_m.back() - floor_m.front(); }
    /// C at least_row over what it wants there; negative: short of it.
    double spare_m(double wanted_c_m) const;
};

struct RakePlan {
    RakeOptions options;
    RakeRows rows;
    std::vector<RakeStage> stages;   ///< exact, then one for every restriction that is set
    std::optional<int> blocked_row;  ///< where nothing can be built: the first without headroom

    const RakeStage& built() const { return stages.back(); }
    bool buildable() const { return !built().floor_m.empty(); }
};

/// Needs options without faults and rows that are two or more.
RakePlan plan_rake(const RakeRows& rows, const RakeOptions& options);

/// Whether the search for this plan fits into memory and time; if not, a coarser step or fewer rows
/// a flight do.
bool is_searchable(const RakeRows& rows, const RakeOptions& options);

}  // namespace rakeline::sight
