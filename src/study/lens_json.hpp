// SPDX-License-Identifier: MIT
#pragma once

#include "study/lens_catalogue.hpp"

#include <span>
#include <string>

namespace rakeline::study {

/// One object: `room`, and `picks`, one a projector and format: {projector, format, throw_m,
/// focal_length_m, focal_length_covering_m?, image_circle_m, shift_across, shift_up, reason,
/// needed, lenses: [...]} best first, or {projector, format, why, mend} where no lens makes a
/// picture. SI; shares 0 to 1; shifts in gate widths and heights.
std::string lens_json(const room::Layout& layout,
                      std::span<const picture::LensPick> picks,
                      std::span<const ListedLens> catalogue);

}  // namespace rakeline::study
