// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

#include <optional>

namespace rakeline::study {

/// What to file with instead of what the layout's use says; unset: as the use says.
struct PlateWish {
    std::optional<double> allowance_m;
    std::optional<double> corner_radius_m;  ///< of the opening on the screen
};

/// The gate plate of one projector and format (indices in the layout). Refused where they make no
/// picture, with the picture's own reason, and where picture::plate_outline refuses.
base::Result<picture::Plate> gate_plate(const Study& study,
                                        int projector,
                                        int format,
                                        const PlateWish& wish = {});

}  // namespace rakeline::study
