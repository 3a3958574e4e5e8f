// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/chart.hpp"

/// Private to drawing/: the axis of frequency, the same on every chart of sound: logarithmic, with
/// the octaves' nominal frequencies (ISO 266) as its labels.
namespace rakeline::drawing {

/// Place along the axis: octaves above 1 kHz.
double octaves(double frequency_hz);

/// Of a chart whose axis runs from `low_hz` to `high_hz`.
Scale frequency_scale(double low_hz, double high_hz);

/// "31.5", "63", ... "500", "1k", ... "16k": those of the octaves within the scale.
std::vector<Tick> octave_ticks(const Scale& scale);

/// Upright helper lines at the octaves, their labels, and below these the title with the unit.
/// Where an octave is too narrow for its label, every other one has none.
void draw_frequency_axis(Chart& chart, const Scale& scale);

}  // namespace rakeline::drawing
