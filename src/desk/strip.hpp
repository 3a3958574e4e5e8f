// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

#include <vector>

/// The drawing in the strip below the room: which ones there are, and the chosen one.
namespace rakeline::desk {

/// In the order of their buttons.
std::vector<StripDrawing> offered_strips(const Workspace& workspace);

const char* strip_name(StripDrawing strip);

/// The chosen drawing for what is chosen in the window; drawn anew only when something that it
/// shows has changed. Needs a study. Where there is none to show, `refused` says why; there is
/// neither while the first trials of curve and tilt are under way. `field`: pixels that it has.
const DrawingCache& strip_drawing(const PanelInput& in, Workspace& workspace, ImVec2 field);

/// Shape of the plot of curve and tilt in `field`, pixels: its lettering is as high on every
/// display.
drawing::PlotShape curve_plot_shape(const Theme& theme, ImVec2 field);

/// The same for the decay of sound.
drawing::PlotShape decay_plot_shape(const Theme& theme, ImVec2 field);

/// The same of the plot of the screen's loss.
drawing::PlotShape loss_plot_shape(const Theme& theme, ImVec2 field);

}  // namespace rakeline::desk
