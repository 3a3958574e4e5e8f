// SPDX-License-Identifier: MIT
#pragma once

#include "sight/rake_rows.hpp"

#include <functional>
#include <optional>

/// The other way round: what of the room would let a given floor give every row the wanted C.
namespace rakeline::sight {

/// A length that does, and the row that would be the first to miss the wanted C beside it.
struct ReverseRake {
    double value_m = 0.0;
    int row = 0;     ///< of the block
    int format = 0;  ///< whose lower edge it looks at
};

/// The lowest sill with which every row of the block, on the floors `RakeRow::floor_m`, clears
/// `wanted_c_m`. `sill_m` is the present one; the picture moves up and down as a whole.
///
///     C = t e + (1 - t) f - a  >=  C wanted     so     sill >= sill now + (C wanted - C)/(1 - t)
///
/// for every line (symbols as in SightOver): a picture set higher always adds to C. Nothing for a
/// block in which no row looks over another.
std::optional<ReverseRake> lowest_sill(const RakeRows& rows, double wanted_c_m, double sill_m);

/// The spacings at which the floor works: from the least up to where it first fails again.
struct SpacingRange {
    ReverseRake least;
    ReverseRake greatest;
    bool from_bottom = false;  ///< the least tried works: no row decides it
    bool to_top = false;       ///< the greatest tried works
};

/// Spacings that are tried, m: what a layout can hold, up to more than any hall has.
inline constexpr double kLeastSpacing_m = 0.5;
inline constexpr double kGreatestSpacing_m = 3.0;

/// The least spacing at which every row clears `wanted_c_m`, and how far from there it may grow.
/// `rows_at` gives the block with its rows set at a spacing, on the floors that they then have;
/// nothing where they could not stand so. With fixed risers a wider spacing mostly takes from C;
/// on a plane floor it adds. Spacings 5 mm apart are tried and the ends between them halved to
/// 0.1 µm, so a range narrower than 5 mm may be missed. Nothing where no spacing does.
std::optional<SpacingRange> spacing_range(
    const std::function<std::optional<RakeRows>(double spacing_m)>& rows_at, double wanted_c_m);

}  // namespace rakeline::sight
