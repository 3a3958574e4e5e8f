// SPDX-License-Identifier: MIT
#pragma once

#include "desk/theme.hpp"

#include <functional>
#include <string>
#include <vector>

/// Small controls in the window's own look.
namespace rakeline::desk {

enum class Tone { lamp, quiet };

/// Buttons side by side of which one is on. Returns the index pressed, or -1.
int segmented(const Theme& theme,
              const char* id,
              const std::vector<std::string>& names,
              int on,
              Tone tone = Tone::quiet);
float segmented_width(const Theme& theme, const std::vector<std::string>& names);

/// A flat drop-down that shows the chosen name; its list holds `names`. Returns the index chosen,
/// or -1.
int dropdown(
    const Theme& theme, const char* id, const std::vector<std::string>& names, int on, float width);

enum class Icon {
    beam,
    open,
    save,
    undo,
    redo,
    report,
    keys,
    theme,
    add,
    copy,
    remove,
    close,
    fit
};

/// A square button with a drawn sign and a tooltip.
bool icon_button(const Theme& theme, Icon icon, const std::string& tip, bool enabled = true);
float icon_button_side(const Theme& theme);

/// A full-width quiet button with words.
bool word_button(const Theme& theme, const std::string& words, float width = 0.0f);

/// The button that the eye should find first.
bool lamp_button(const Theme& theme, const std::string& words, float width = 0.0f);

/// A tick box with the label before it, in a row of the editor's height.
bool tick(const Theme& theme, const char* id, bool& value);

}  // namespace rakeline::desk
