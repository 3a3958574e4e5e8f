// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"

/// The scale of the screen's luminance over a picture of the room, and the switch that shows both.
namespace rakeline::desk {

float luminance_switch_width(const Theme& theme);

/// At the cursor.
void luminance_switch(const PanelInput& in, Workspace& workspace);

/// Its lower left corner at `corner`; says why where there is no luminance to show.
void luminance_scale(const PanelInput& in, Workspace& workspace, ImVec2 corner, float most_width);

}  // namespace rakeline::desk
