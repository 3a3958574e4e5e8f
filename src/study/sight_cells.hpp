// SPDX-License-Identifier: MIT
#pragma once

#include "study/slices.hpp"
#include "study/study.hpp"

/// Private to study/: what the figures of sight look at.
namespace rakeline::study {

inline constexpr Per kFormatSeat{.format = true, .seat = true};
inline constexpr Per kFormatRow{.format = true, .row = true};

const sight::FormatSight& sight_of(const Cell& cell);
const sight::ViewingAngles& angles_of(const Cell& cell);

/// Records where the eye is and how large the opening.
void record_eye(const Cell& cell, Working& working);

/// Records D, R, T and N of a rear eye over a `front` one ("eye", or a "crown"), as in
/// sight::c_value.
void record_clearance(const glm::dvec3& rear,
                      const glm::dvec3& front,
                      const glm::dvec3& focus,
                      const std::string& what,
                      Working& working);

}  // namespace rakeline::study
