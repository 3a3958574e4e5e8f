// SPDX-License-Identifier: MIT
#pragma once

#include "light/meter_advice.hpp"
#include "study/meter_rows.hpp"
#include "study/study.hpp"

/// Commissioning: readings on the screen held against the study, and the light they come from. The
/// numbers here are values of a trial; adopted, the register's own figures state them.
namespace rakeline::study {

/// What was metered.
struct MeterSubject {
    int projector = 0;
    int format = 0;
    std::optional<int> seat;  ///< where the meter stood; unset: the study's reference seat
};

/// A row of the table with its place found.
struct MeterPlace {
    MeterRow row;
    glm::dvec2 uv{0.0};       ///< surface coordinates
    std::optional<int> seat;  ///< of luminance readings
};

struct MeterCheck {
    MeterSubject subject;
    std::vector<MeterPlace> places;
    light::MeterScene scene;
    light::MeterFit fit;
    std::vector<light::MeterSign> signs;
};

/// The projector's first format with a picture, or why it has none.
base::Result<int> metered_format(const Study& study, int projector);

/// Fits the rows. Refused, each with its line and column: a pair without a picture, no seat to read
/// luminance from, places off the opening or where the picture leaves it dark, the same place read
/// twice, no light read at all.
base::Result<MeterCheck> check_meter(const Study& study,
                                     const MeterSubject& subject,
                                     const std::vector<MeterRow>& rows);

/// The layout with the fit in its projector: the flux as measured out of the lens, corner fraction
/// and hot spot. Measured, and not the chain scaled: readings tell how much light comes out, not
/// which factor of the chain has changed; the chain stays in the file beside it, and the ratio of
/// both is what lamp, mirror and glass have lost. A flux that a layout can't hold is refused.
base::Result<room::Layout> metered_layout(const room::Layout& layout, const MeterCheck& check);

}  // namespace rakeline::study
