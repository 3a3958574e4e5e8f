// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Delays of the loudspeakers, put into the layout.
namespace rakeline::study {

/// The layout of the study with the delays of the figure sound.delay_suggested, each to a hundredth
/// of a millisecond, as it is shown; a hundredth is 3 mm of way. Nothing where none is suggested: a
/// room without a reference seat or without a loudspeaker of the screen.
std::optional<room::Layout> with_suggested_delays(const Study& study);

}  // namespace rakeline::study
