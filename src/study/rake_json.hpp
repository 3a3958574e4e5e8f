// SPDX-License-Identifier: MIT
#pragma once

#include "study/rake_plan.hpp"

#include <string>

namespace rakeline::study {

/// What a rake is printed for.
struct RakeSubject {
    const room::Layout& layout;
    int block = 0;
    double step_most_m = 0.2;  ///< greatest riser of a step in an aisle
};

/// One object: {room, block, wanted_c_m, over ("row_in_front" or "second_row"), meets, verdict,
/// stages, rows, cautions}. `stages`, in the order in which the restrictions are laid on:
/// {restriction, meets, rise_m?, least_row?, least_c_m?, short_by_m?, c_m: a number or null a row}.
/// `rows`: {row, spacing_m, wanted_c_m?, exact_riser_m?, riser_m?, floor_m?, c_m?, aisle_steps?,
/// aisle_step_riser_m?, ceiling_m, beam_m?}. Lengths in m above the floor datum; a member with ? is
/// left out where it has no value.
std::string rake_json(const RakeSubject& subject, const sight::RakePlan& plan);

/// {room, block, wanted_c_m, over, sill_m?, row?, format?}.
std::string sill_json(const RakeSubject& subject,
                      const sight::RakeOptions& options,
                      const std::optional<sight::ReverseRake>& found,
                      const sight::RakeRows& rows);

/// {room, block, wanted_c_m, over, least?, greatest?}, each {spacing_m, row?, format?}; row and
/// format, the first to miss beyond that end, are left out at an end of what was tried.
std::string spacing_json(const RakeSubject& subject,
                         const sight::RakeOptions& options,
                         const std::optional<sight::SpacingRange>& found,
                         const sight::RakeRows& rows);

}  // namespace rakeline::study
