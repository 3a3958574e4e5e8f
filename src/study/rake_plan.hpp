// SPDX-License-Identifier: MIT
#pragma once

#include "sight/rake.hpp"
#include "sight/rake_reverse.hpp"
#include "study/study.hpp"

#include <vector>

/// The rake solver over a studied room: what it reads of the study, and what it makes of the
/// layout.
namespace rakeline::study {

/// Options that a block starts from: its own wanted C over the row in front, risers in steps of
/// 10 mm (half an inch in imperial units), a seated head under every beam, and from a standing head
/// 0.3 m to the ceiling (all common practice, no source).
sight::RakeOptions rake_options(const Study& study, int block, base::UnitSystem system);

/// The block's rows with their sight lines against every format, and over each row the ceiling or
/// a balcony, and the lowest beam: the lower side of every projector's every picture over the row's
/// tread, from wall to wall. A balcony's own depth is in no layout: it counts as its floor alone.
/// Problems: a block of one row, or a row that does not look over the one ahead.
base::Result<sight::RakeRows> rake_rows_of(const Study& study, int block, sight::RakeOver over);

/// The exact and the built floor for one block. Problems: options out of range (where: the name of
/// the member), a search too large, and those of rake_rows_of.
base::Result<sight::RakePlan> rake_plan(const Study& study,
                                        int block,
                                        const sight::RakeOptions& options);

/// The layout with the block on floors `floor_m`, one a row, as flights; the first row's is kept.
///
/// A block that stands on the hall's profile takes the hall to a floor by seating with it: the
/// other blocks on that profile then keep the height of each of their rows, as flights of one row
/// each, level from wall to wall. Problems: what check_layout finds in the new layout.
base::Result<room::Layout> raked_layout(const room::Layout& layout,
                                        int block,
                                        const std::vector<double>& floor_m);

/// The lowest sill for the block as it stands.
base::Result<std::optional<sight::ReverseRake>> sill_for_floor(const Study& study,
                                                               int block,
                                                               const sight::RakeOptions& options);

/// The spacings for the block's floor: a slope or the hall's profile stays where it is and the rows
/// move along it; risers (an equal-clearance floor's as they are now) stay with their rows.
base::Result<std::optional<sight::SpacingRange>> spacing_for_floor(
    const Study& study, int block, const sight::RakeOptions& options);

/// The layout with another sill, or the block with another spacing and the floor that
/// spacing_for_floor speaks of. Problems: what check_layout finds.
base::Result<room::Layout> with_sill(const room::Layout& layout, double sill_m);
base::Result<room::Layout> with_spacing(const room::Layout& layout, int block, double spacing_m);

}  // namespace rakeline::study
