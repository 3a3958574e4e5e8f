// SPDX-License-Identifier: MIT
#pragma once

#include "picture/lens_pick.hpp"

#include <span>
#include <string>

namespace rakeline::study {

/// A lens that could be bought or is there, and where it is listed.
struct ListedLens {
    room::Lens lens;
    std::string list;  ///< "layout", or the name of a series
};

/// One object: `room`, and `picks`, one a projector and format: {projector, format, throw_m,
/// focal_length_m, focal_length_covering_m?, image_circle_m, shift_across, shift_up, reason,
/// needed, lenses: [...]} best first, or {projector, format, why, mend} where no lens makes a
/// picture. SI; shares 0 to 1; shifts in gate widths and heights.
std::string lens_json(const room::Layout& layout,
                      std::span<const picture::LensPick> picks,
                      std::span<const ListedLens> catalogue);

}  // namespace rakeline::study
