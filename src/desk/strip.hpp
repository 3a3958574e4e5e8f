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
/// shows has changed. Needs a study. Where there is none to show, `refused` says why.
const DrawingCache& strip_drawing(const PanelInput& in, Workspace& workspace);

/// The drawing itself, with no cache; `choice` is what the window has chosen.
base::Result<drawing::Drawing> draw_strip(const study::Study& study,
                                          const Workspace& workspace,
                                          StripDrawing strip,
                                          const drawing::DrawingChoice& choice);

}  // namespace rakeline::desk
