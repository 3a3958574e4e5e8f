// SPDX-License-Identifier: MIT
#pragma once

#include "base/assert.hpp"
#include "study/study.hpp"

/// Private to study/: what the figures of the hall's sound share.
namespace rakeline::study {

/// A study of a room always has a hall.
inline const sound::HallSound& hall_of(const Cell& c) {
    RL_ASSERT(c.study.sound.hall);
    return *c.study.sound.hall;
}

}  // namespace rakeline::study
