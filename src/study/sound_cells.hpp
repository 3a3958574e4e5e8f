// SPDX-License-Identifier: MIT
#pragma once

#include "study/study.hpp"

/// Private to study/: what the figures of the sheet look at.
namespace rakeline::study {

/// The sheet before the cell's loudspeaker, or null where that is no screen channel behind it.
const sound::ChannelSheet* channel_of(const Cell& cell);

/// Records what the loss of the sheet is worked from: its own measurement, or holes and mass.
void record_sheet(const Cell& cell, Working& working);

}  // namespace rakeline::study
