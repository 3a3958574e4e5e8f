// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panels/panels.hpp"

namespace rakeline::desk {

/// Draws all panels, each in its place, for a display of the context's size.
void draw_frame(const PanelInput& in, Workspace& workspace, Requests& out);

/// Asks for what the keys mean, unless a text is being typed or a question is open.
void take_keys(const std::vector<KeyPress>& keys, Workspace& workspace, Requests& out);

}  // namespace rakeline::desk
