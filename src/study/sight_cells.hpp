// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Private to study/: what the figures of sight look at.
namespace rakeline::study {

inline constexpr Per kFormatSeat{.format = true, .seat = true};
inline constexpr Per kFormatRow{.format = true, .row = true};

const sight::FormatSight& sight_of(const Cell& cell);
const sight::ViewingAngles& angles_of(const Cell& cell);

/// Records where the eye is and how large the opening.
void record_eye(const Cell& cell, Working& working);

}  // namespace rakeline::study
