// SPDX-License-Identifier: MIT
#pragma once

#include "desk/theme.hpp"

#include <string>

/// Words in the window's own faces and colours.
namespace rakeline::desk {

float text_width(ImFont* font, const std::string& text);

/// `text`, or as much of it as `width` takes, ended by "…".
std::string fitted(ImFont* font, const std::string& text, float width);

/// `text` with a capital first.
std::string heading(const std::string& text);

/// `text` as a sentence: a capital first, a full stop last.
std::string sentence(const std::string& text);

/// A line of text as an item.
void text_line(ImFont* font, const ImVec4& colour, const std::string& text);

/// Text wrapped at the right end of the region, as an item.
void text_wrapped(ImFont* font, const ImVec4& colour, const std::string& text);

/// Text painted at a place, without taking part in the layout.
void paint_text(
    ImDrawList& list, ImFont* font, ImVec2 at, const ImVec4& colour, const std::string& text);

/// The same, its right end at `right`.
void paint_text_right(
    ImDrawList& list, ImFont* font, ImVec2 right, const ImVec4& colour, const std::string& text);

/// A small heading in the lamp's colour.
void group_heading(const Theme& theme, const std::string& text);

/// A hairline over the width of the region.
void hairline(const Theme& theme);

/// A tooltip of one wrapped paragraph with an optional quiet second one, if the last item is
/// hovered.
void hint(const Theme& theme, const std::string& text, const std::string& quiet = {});

}  // namespace rakeline::desk
