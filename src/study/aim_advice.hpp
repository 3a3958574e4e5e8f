// SPDX-License-Identifier: MIT
#pragma once

#include "sound/aim_search.hpp"
#include "study/study.hpp"

/// The aim of a loudspeaker that makes the seats differ least, put into the layout.
namespace rakeline::study {

/// sound::best_aim for a loudspeaker of the study, its angles to a tenth of a degree and its height
/// to a centimetre, as they would be set; the spread is that of the rounded aim, and the aim is
/// left as it is where that is no better. Nothing for what is no screen channel, and without seats.
std::optional<sound::AimProposal> aim_advice(const Study& study, int loudspeaker, bool move_height);

/// The layout with a loudspeaker aimed so.
room::Layout with_aim(const room::Layout& layout, int loudspeaker, const sound::Aim& aim);

/// "L: level spread 2 to 8 kHz from 9.1 dB to 6.4 dB; yaw 19.1° to 14.0°, down 9.2° to 4.1°"; the
/// height where it changes. Where nothing is better, that.
std::string aim_words(const room::Layout& layout,
                      int loudspeaker,
                      const sound::AimProposal& proposal,
                      base::UnitSystem units);

}  // namespace rakeline::study
