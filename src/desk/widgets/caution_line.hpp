// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

#include <string_view>

namespace rakeline::desk {

/// One line that names a caution of report::cautions() by its title, says it in full on hover and
/// opens the list when pressed.
void caution_line(const PanelInput& in, Workspace& w, std::string_view title);

}  // namespace rakeline::desk
