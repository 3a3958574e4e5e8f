// SPDX-License-Identifier: MIT
#include "desk/widgets/text.hpp"

#include <cfloat>
#include <cmath>

namespace rakeline::desk {
namespace {

float size_of(ImFont* font) {
    return font->FontSize * ImGui::GetIO().FontGlobalScale;
}

}  // namespace

float text_width(ImFont* font, const std::string& text) {
    return font->CalcTextSizeA(size_of(font), FLT_MAX, 0.0f, text.c_str()).x;
}

std::string fitted(ImFont* font, const std::string& text, float width) {
    if (text_width(font, text) <= width) return text;
    std::string cut = text;
    while (!cut.empty() && text_width(font, cut + "…") > width) {
        // A UTF-8 letter goes whole: its trailing bytes are 10xxxxxx.
        while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0U) == 0x80U)
            cut.pop_back();
        if (!cut.empty()) cut.pop_back();
    }
    return cut + "…";
}

std::string heading(const std::string& text) {
    std::string out = text;
    if (!out.empty()) out[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(out[0])));
    return out;
}

std::string sentence(const std::string& text) {
    std::string out = heading(text);
    if (!out.empty() && out.back() != '.') out += '.';
    return out;
}

void text_line(ImFont* font, const ImVec4& colour, const std::string& text) {
    ImGui::PushFont(font);
    ImGui::PushStyleColor(ImGuiCol_Text, colour);
    ImGui::TextUnformatted(text.c_str());
    ImGui::PopStyleColor();
    ImGui::PopFont();
}

void text_wrapped(ImFont* font, const ImVec4& colour, const std::string& text) {
    ImGui::PushTextWrapPos(0.0f);
    text_line(font, colour, text);
    ImGui::PopTextWrapPos();
}

void paint_text(
    ImDrawList& list, ImFont* font, ImVec2 at, const ImVec4& colour, const std::string& text) {
    const ImVec2 whole{std::round(at.x), std::round(at.y)};
    list.AddText(font, size_of(font), whole, packed(colour), text.c_str());
}

void paint_text_right(
    ImDrawList& list, ImFont* font, ImVec2 right, const ImVec4& colour, const std::string& text) {
    paint_text(list, font, {right.x - text_width(font, text), right.y}, colour, text);
}

void group_heading(const Theme& theme, const std::string& text) {
    ImGui::Dummy({0.0f, theme.px(2)});
    const float room = ImGui::GetContentRegionAvail().x;
    text_line(theme.font.small, theme.colour.lamp, fitted(theme.font.small, text, room));
}

void hairline(const Theme& theme) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::GetWindowDrawList()->AddLine(at, {at.x + width, at.y}, packed(theme.colour.line));
    ImGui::Dummy({width, 1.0f});
}

void hint(const Theme& theme, const std::string& text, const std::string& quiet) {
    if (!ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled)) return;
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {theme.px(12), theme.px(10)});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(theme.px(340));
    text_line(theme.font.small, theme.colour.text, text);
    if (!quiet.empty()) text_line(theme.font.small, theme.colour.quiet, quiet);
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
}

}  // namespace rakeline::desk
