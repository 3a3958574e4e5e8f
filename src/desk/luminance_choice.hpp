// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// The luminance that a seat sees over the picture, for the chosen projector and format, made ready
/// to show.
namespace rakeline::desk {

/// The selected seat, else the reference seat.
std::optional<int> luminance_seat(const study::Study& study, const Workspace& workspace);

/// Worked out anew only when the study, the choice, the seat or the units have changed: a fraction
/// of a millisecond. Needs a study.
const LuminanceCache& screen_luminance(const PanelInput& in, Workspace& workspace);

/// The scale is this many lines of lettering wide.
inline constexpr double kScaleWidth_lines = 22.0;

}  // namespace rakeline::desk
