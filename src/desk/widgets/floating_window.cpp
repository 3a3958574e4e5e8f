// SPDX-License-Identifier: MIT
#include "desk/widgets/floating_window.hpp"

#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"

namespace rakeline::desk {
namespace {

constexpr ImGuiWindowFlags kFloating = ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoCollapse |
                                       ImGuiWindowFlags_NoSavedSettings |
                                       ImGuiWindowFlags_AlwaysAutoResize;

}  // namespace

bool begin_floating(const Theme& t, const char* id, const std::string& title, float width) {
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowSizeConstraints({width, 0.0f}, {width, display.y * 0.86f});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, t.colour.panel);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 1.0f);
    ImGui::Begin(id, nullptr, kFloating);
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
    const float room = ImGui::GetContentRegionAvail().x - icon_button_side(t) - t.px(8);
    text_line(t.font.title, t.colour.text, fitted(t.font.title, title, room));
    ImGui::SameLine(ImGui::GetWindowWidth() - t.px(18) - icon_button_side(t));
    return !icon_button(t, Icon::close, "Close · Esc");
}

}  // namespace rakeline::desk
