// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"

/// The picture as the selected seat sees it, in the card and in the hall's place.
namespace rakeline::desk {

/// Whether the hall's place shows what the selected seat sees.
bool sees_from_seat(const PanelInput& in, const Workspace& workspace);

/// At the cursor, with its switches over it: the others' heads, and large or small. Says where it
/// is of an older study than the room as edited.
void seat_picture(const PanelInput& in, Workspace& workspace, ImVec2 size, float rounding);

}  // namespace rakeline::desk
