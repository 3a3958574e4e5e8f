// SPDX-License-Identifier: MIT
#include "desk/theme.hpp"

#include <cmath>

namespace rakeline::desk {
namespace {

ImVec4 hex(unsigned rgb) {
    return {static_cast<float>((rgb >> 16U) & 0xFFU) / 255.0f,
            static_cast<float>((rgb >> 8U) & 0xFFU) / 255.0f,
            static_cast<float>(rgb & 0xFFU) / 255.0f, 1.0f};
}

void set_colours(ImVec4* colours, const Palette& p) {
    const ImVec4 clear{0, 0, 0, 0};
    const ImVec4 hover{p.line.x, p.line.y, p.line.z, 0.55f};
    colours[ImGuiCol_Text] = p.text;
    colours[ImGuiCol_TextDisabled] = p.quiet;
    colours[ImGuiCol_WindowBg] = p.panel;
    colours[ImGuiCol_ChildBg] = clear;
    colours[ImGuiCol_PopupBg] = p.raised;
    colours[ImGuiCol_Border] = p.line;
    colours[ImGuiCol_TableBorderLight] = colours[ImGuiCol_TableBorderStrong] = p.line;
    colours[ImGuiCol_FrameBg] = p.raised;
    colours[ImGuiCol_FrameBgHovered] = p.line;
    colours[ImGuiCol_FrameBgActive] = p.line;
    colours[ImGuiCol_TitleBg] = colours[ImGuiCol_TitleBgActive] = p.panel;
    colours[ImGuiCol_ScrollbarBg] = clear;
    colours[ImGuiCol_ScrollbarGrab] = p.line;
    colours[ImGuiCol_ScrollbarGrabHovered] = colours[ImGuiCol_ScrollbarGrabActive] = p.quiet;
    colours[ImGuiCol_CheckMark] = p.lamp;
    colours[ImGuiCol_SliderGrab] = colours[ImGuiCol_SliderGrabActive] = p.lamp;
    colours[ImGuiCol_Button] = p.raised;
    colours[ImGuiCol_ButtonHovered] = colours[ImGuiCol_ButtonActive] = p.line;
    colours[ImGuiCol_Header] = p.raised;
    colours[ImGuiCol_HeaderHovered] = colours[ImGuiCol_HeaderActive] = hover;
    colours[ImGuiCol_Separator] = p.line;
    colours[ImGuiCol_SeparatorHovered] = colours[ImGuiCol_SeparatorActive] = p.lamp;
    colours[ImGuiCol_ResizeGrip] = clear;
    colours[ImGuiCol_ResizeGripHovered] = colours[ImGuiCol_ResizeGripActive] = p.lamp;
    colours[ImGuiCol_TextSelectedBg] = {p.lamp.x, p.lamp.y, p.lamp.z, 0.30f};
    colours[ImGuiCol_NavHighlight] = p.lamp;
    colours[ImGuiCol_ModalWindowDimBg] = {0, 0, 0, 0.45f};
}

}  // namespace

Palette dark_palette() {
    return {.ground = hex(0x14161A),
            .panel = hex(0x1B1E24),
            .raised = hex(0x242831),
            .line = hex(0x323843),
            .text = hex(0xE9E4D8),
            .quiet = hex(0x949CA8),
            .lamp = hex(0xF0B35A),
            .holds = hex(0x5FB3A8),
            .missed = hex(0xE0714F),
            .beam = hex(0xF0B35A),
            .on_lamp = hex(0x1B1E24)};
}

/// The same hues, darkened to at least 4.5 : 1 against the paper ground.
Palette paper_palette() {
    return {.ground = hex(0xF7F4EC),
            .panel = hex(0xF1EDE3),
            .raised = hex(0xE6E1D4),
            .line = hex(0xCDC6B5),
            .text = hex(0x23262C),
            .quiet = hex(0x565D68),
            .lamp = hex(0x7E5108),
            .holds = hex(0x1C655B),
            .missed = hex(0xA23A1A),
            .beam = hex(0xC9882A),
            .on_lamp = hex(0xFBF9F4)};
}

Palette following_palette(const Palette& palette) {
    Palette out = palette;
    out.text = out.lamp = out.holds = out.missed = palette.quiet;
    return out;
}

float Theme::px(float at_scale_one) const {
    return std::round(at_scale_one * scale);
}

void apply_theme(const Theme& theme) {
    ImGuiStyle style;
    style.WindowPadding = {theme.px(18), theme.px(14)};
    style.FramePadding = {theme.px(10), theme.px(5)};
    style.ItemSpacing = {theme.px(8), theme.px(8)};
    style.ItemInnerSpacing = {theme.px(8), theme.px(4)};
    style.CellPadding = {theme.px(6), theme.px(4)};
    style.IndentSpacing = theme.px(12);
    style.ScrollbarSize = theme.px(10);
    style.GrabMinSize = theme.px(24);
    style.WindowRounding = style.PopupRounding = theme.px(8);
    style.ChildRounding = style.FrameRounding = style.GrabRounding = theme.px(6);
    style.ScrollbarRounding = theme.px(5);
    style.WindowBorderSize = style.ChildBorderSize = style.FrameBorderSize = 0.0f;
    style.PopupBorderSize = 1.0f;
    style.CircleTessellationMaxError = 0.15f;
    set_colours(style.Colors, theme.colour);
    ImGui::GetStyle() = style;
}

ImU32 packed(const ImVec4& colour, float strength) {
    return ImGui::ColorConvertFloat4ToU32({colour.x, colour.y, colour.z, colour.w * strength});
}

const ImVec4& verdict_colour(const Palette& palette, study::Verdict verdict) {
    switch (verdict) {
        case study::Verdict::holds:
            return palette.holds;
        case study::Verdict::near:
            return palette.lamp;
        case study::Verdict::missed:
            return palette.missed;
        case study::Verdict::no_limit:
            break;
    }
    return palette.quiet;
}

ImVec4 of_rgb(const drawing::Rgb& rgb) {
    return {static_cast<float>(rgb.r), static_cast<float>(rgb.g), static_cast<float>(rgb.b), 1.0f};
}

ImVec4 ink_colour(const Palette& palette, drawing::Ink ink) {
    switch (ink) {
        case drawing::Ink::line:
            return palette.text;
        case drawing::Ink::quiet:
            return palette.quiet;
        case drawing::Ink::beam:
            return palette.beam;
        case drawing::Ink::screen:
            return palette.text;
        case drawing::Ink::sight:
        case drawing::Ink::holds:
            return palette.holds;
        case drawing::Ink::sound:
            return palette.quiet;
        case drawing::Ink::near:
            return palette.lamp;
        case drawing::Ink::missed:
            return palette.missed;
        case drawing::Ink::over_dark:
            return of_rgb(drawing::kOverDark);
        case drawing::Ink::over_bright:
            return of_rgb(drawing::kOverBright);
    }
    return palette.text;
}

}  // namespace rakeline::desk
