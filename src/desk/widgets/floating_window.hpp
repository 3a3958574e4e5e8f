// SPDX-License-Identifier: MIT
#pragma once

#include "desk/theme.hpp"

#include <string>

namespace rakeline::desk {

/// Begins a window that floats for as long as it is wanted, as high as what it holds up to most of
/// the display. ImGui::End() must follow; false: its closing button was pressed.
bool begin_floating(const Theme& theme, const char* id, const std::string& title, float width);

}  // namespace rakeline::desk
