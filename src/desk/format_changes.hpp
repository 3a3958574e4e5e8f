// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// Format changes of what is chosen in the window, worked out once and kept.
namespace rakeline::desk {

/// The sheet of the chosen projector and the moves between the two formats asked for; on the tab of
/// machines, the chosen format on the chosen machine and the other one too. Brings the formats and
/// the machine asked for into what there is. Worked out anew only when something that it hangs on
/// has changed. Needs a study with a projector and a format.
const ChangeCache& format_changes(const PanelInput& in, Workspace& workspace);

/// What stands behind a cell, for its tooltip: every figure's meaning, every field's path.
std::string cell_meaning(const study::SheetCell& cell);

}  // namespace rakeline::desk
