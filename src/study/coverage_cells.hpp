// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Private to study/: the loudspeaker of a cell and what was computed of it.
namespace rakeline::study {

inline const room::Loudspeaker& loudspeaker_of(const Cell& c) {
    return c.study.layout().loudspeakers.at(static_cast<std::size_t>(c.loudspeaker));
}

inline const sound::LoudspeakerSound& sound_of(const Cell& c) {
    return c.study.sound.loudspeakers.at(static_cast<std::size_t>(c.loudspeaker));
}

inline const sound::LoudspeakerCoverage& coverage_of(const Cell& c) {
    return c.study.sound.coverage.loudspeakers.at(static_cast<std::size_t>(c.loudspeaker));
}

inline const sound::CabinetRoom& cabinet_room_of(const Cell& c) {
    return c.study.sound.cabinets.at(static_cast<std::size_t>(c.loudspeaker));
}

}  // namespace rakeline::study
