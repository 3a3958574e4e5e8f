// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// Picture-width advice for the chosen format, made ready to show, and the edit that takes a width.
namespace rakeline::desk {

/// Shares of the seats that can be chosen.
inline constexpr double kWidthShares[] = {0.5, 0.75, 0.9, 0.95, 1.0};

/// The advice for what is chosen; worked out anew only when the study, the format, the share or the
/// units have changed. Needs a study of a layout with a format.
const WidthCache& picture_widths(const PanelInput& in, Workspace& workspace);

/// The edit that makes the format `width_m` wide, or why the room has no place for it.
base::Result<Edit> width_edit(const PanelInput& in, int format, double width_m);

}  // namespace rakeline::desk
