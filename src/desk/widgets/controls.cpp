// SPDX-License-Identifier: MIT
#include "desk/widgets/controls.hpp"

#include "desk/widgets/text.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

constexpr float kControlHeight = 28.0f;

float segment_width(const Theme& theme, const std::string& name) {
    return std::max(theme.px(44), text_width(theme.font.body, name) + theme.px(20));
}

bool segment(const Theme& theme, const std::string& name, bool on, Tone tone) {
    const ImVec2 size{segment_width(theme, name), theme.px(kControlHeight)};
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const bool pressed = ImGui::InvisibleButton("##segment", size);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const bool lit = on && tone == Tone::lamp;
    const ImVec4 field = lit                            ? theme.colour.lamp
                         : on || ImGui::IsItemHovered() ? theme.colour.line
                                                        : theme.colour.raised;
    list.AddRectFilled(at, {at.x + size.x, at.y + size.y}, packed(field), theme.px(6));
    const float left = at.x + (size.x - text_width(theme.font.body, name)) / 2.0f;
    const float top = at.y + (size.y - theme.px(16)) / 2.0f - theme.px(1);
    const ImVec4& ink = lit ? theme.colour.on_lamp : on ? theme.colour.text : theme.colour.quiet;
    paint_text(list, theme.font.body, {left, top}, ink, name);
    return pressed;
}

/// The sign of a drop-down: a small open angle.
void paint_angle(const Theme& theme, ImVec2 centre) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float r = theme.px(4);
    list.PathLineTo({centre.x - r, centre.y - r * 0.5f});
    list.PathLineTo({centre.x, centre.y + r * 0.5f});
    list.PathLineTo({centre.x + r, centre.y - r * 0.5f});
    list.PathStroke(packed(theme.colour.quiet), ImDrawFlags_None, 1.5f * theme.scale);
}

}  // namespace

float segmented_width(const Theme& theme, const std::vector<std::string>& names) {
    float width = 0.0f;
    for (const std::string& name : names)
        width += segment_width(theme, name) + theme.px(4);
    return width;
}

int segmented(
    const Theme& theme, const char* id, const std::vector<std::string>& names, int on, Tone tone) {
    int pressed = -1;
    ImGui::PushID(id);
    for (int i = 0; i < static_cast<int>(names.size()); ++i) {
        if (i > 0) ImGui::SameLine(0.0f, theme.px(4));
        ImGui::PushID(i);
        if (segment(theme, names[static_cast<std::size_t>(i)], i == on, tone)) pressed = i;
        ImGui::PopID();
    }
    ImGui::PopID();
    return pressed;
}

int dropdown(const Theme& theme,
             const char* id,
             const std::vector<std::string>& names,
             int on,
             float width) {
    int chosen = -1;
    const bool known = on >= 0 && on < static_cast<int>(names.size());
    const std::string shown = known ? names[static_cast<std::size_t>(on)] : std::string{"–"};
    ImGui::SetNextItemWidth(width);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {theme.px(8), theme.px(8)});
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float room = width - theme.px(38);
    const std::string words = fitted(theme.font.body, shown, room);
    const bool open = ImGui::BeginCombo(id, words.c_str(), ImGuiComboFlags_NoArrowButton);
    if (!open)
        paint_angle(theme, {at.x + width - theme.px(14), at.y + ImGui::GetFrameHeight() / 2.0f});
    if (open) {
        for (int i = 0; i < static_cast<int>(names.size()); ++i) {
            ImGui::PushID(i);
            if (ImGui::Selectable(names[static_cast<std::size_t>(i)].c_str(), i == on)) chosen = i;
            ImGui::PopID();
        }
        ImGui::EndCombo();
    }
    ImGui::PopStyleVar();
    return chosen;
}

bool word_button(const Theme& theme, const std::string& words, float width) {
    return ImGui::Button(words.c_str(), {width, theme.px(kControlHeight)});
}

bool lamp_button(const Theme& theme, const std::string& words, float width) {
    ImVec4 hover = theme.colour.lamp;
    hover.w = 0.85f;
    ImGui::PushStyleColor(ImGuiCol_Button, theme.colour.lamp);
    ImGui::PushStyleColor(ImGuiCol_ButtonHovered, hover);
    ImGui::PushStyleColor(ImGuiCol_ButtonActive, hover);
    ImGui::PushStyleColor(ImGuiCol_Text, theme.colour.on_lamp);
    const bool pressed = ImGui::Button(words.c_str(), {width, theme.px(kControlHeight)});
    ImGui::PopStyleColor(4);
    return pressed;
}

bool tick(const Theme& theme, const char* id, bool& value) {
    ImGui::PushID(id);
    const float side = theme.px(18);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const bool pressed = ImGui::InvisibleButton("##tick", {side, theme.px(kControlHeight)});
    if (pressed) value = !value;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float top = at.y + (theme.px(kControlHeight) - side) / 2.0f;
    const ImVec4 field = value                    ? theme.colour.lamp
                         : ImGui::IsItemHovered() ? theme.colour.line
                                                  : theme.colour.raised;
    list.AddRectFilled({at.x, top}, {at.x + side, top + side}, packed(field), theme.px(4));
    if (value)
        paint_text(list, theme.font.small,
                   {at.x + (side - text_width(theme.font.small, "✓")) / 2.0f, top + theme.px(2)},
                   theme.colour.on_lamp, "✓");
    ImGui::PopID();
    return pressed;
}

}  // namespace rakeline::desk
