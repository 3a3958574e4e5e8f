// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// Screen sheets set against each other: whether the trials are those of the layout that is open,
/// and the edits that hang one or turn its holes.
namespace rakeline::desk {

/// The newest trials are of the layout that is open, with the sheets that are known now.
bool sheets_current(const PanelInput& in, const Workspace& workspace);

/// The layout with the sheet of a trial; nothing for the one that hangs, or while the trials are
/// not current.
std::optional<Edit> hang_sheet(const PanelInput& in, const Workspace& workspace, std::size_t trial);

/// The layout with its holes turned as advised; nothing where that makes no beat fainter.
std::optional<Edit> turn_holes(const PanelInput& in, const Workspace& workspace);

}  // namespace rakeline::desk
