// SPDX-License-Identifier: MIT
#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"

#include <cmath>
#include <initializer_list>

namespace rakeline::desk {
namespace {

/// Paints on a field of 16 by 16 units with the origin at its upper left corner.
class Pen {
public:
    Pen(ImDrawList& list, ImVec2 origin, float unit, ImU32 colour)
        : list_(list), origin_(origin), unit_(unit), colour_(colour) {}

    void path(std::initializer_list<ImVec2> points, bool closed = false) {
        for (const ImVec2& p : points)
            list_.PathLineTo(at(p));
        list_.PathStroke(colour_, closed ? ImDrawFlags_Closed : ImDrawFlags_None, 1.4f * unit_);
    }
    void arc(ImVec2 centre, float radius, float from, float to) {
        list_.PathArcTo(at(centre), radius * unit_, from, to, 24);
        list_.PathStroke(colour_, ImDrawFlags_None, 1.4f * unit_);
    }
    void half_disc(ImVec2 centre, float radius) {
        list_.PathArcTo(at(centre), radius * unit_, -1.5708f, 1.5708f, 24);
        list_.PathFillConvex(colour_);
    }

private:
    ImVec2 at(ImVec2 p) const { return {origin_.x + p.x * unit_, origin_.y + p.y * unit_}; }
    ImDrawList& list_;
    ImVec2 origin_;
    float unit_;
    ImU32 colour_;
};

void draw_turn(Pen& pen, bool forward) {
    const auto x = [forward](float at) { return forward ? 16.0f - at : at; };
    pen.path({{x(6), 2.5f}, {x(2.5f), 6}, {x(6), 9.5f}});
    pen.path({{x(2.5f), 6}, {x(10), 6}});
    if (forward)
        pen.arc({6, 9.75f}, 3.75f, 1.5708f, 4.7124f);
    else
        pen.arc({10, 9.75f}, 3.75f, -1.5708f, 1.5708f);
    pen.path({{x(10), 13.5f}, {x(6), 13.5f}});
}

void draw_file_icon(Pen& pen, Icon icon) {
    switch (icon) {
        case Icon::open:
            pen.path({{1.5f, 13}, {1.5f, 3.5f}, {6, 3.5f}, {7.5f, 5.5f}, {13, 5.5f}, {13, 7.5f}});
            pen.path({{1.5f, 13}, {4, 7.5f}, {15, 7.5f}, {12.5f, 13}}, true);
            break;
        case Icon::save:
            pen.path({{8, 1.5f}, {8, 9.5f}});
            pen.path({{4.5f, 6.5f}, {8, 10}, {11.5f, 6.5f}});
            pen.path({{2, 10.5f}, {2, 14}, {14, 14}, {14, 10.5f}});
            break;
        case Icon::report:
            pen.path({{3, 1.5f}, {10, 1.5f}, {13, 4.5f}, {13, 14.5f}, {3, 14.5f}}, true);
            pen.path({{5.5f, 6.5f}, {10.5f, 6.5f}});
            pen.path({{5.5f, 9}, {10.5f, 9}});
            pen.path({{5.5f, 11.5f}, {8.5f, 11.5f}});
            break;
        default:
            break;
    }
}

void draw_small_icon(Pen& pen, Icon icon) {
    switch (icon) {
        case Icon::add:
            pen.path({{8, 3.5f}, {8, 12.5f}});
            pen.path({{3.5f, 8}, {12.5f, 8}});
            break;
        case Icon::copy:
            pen.path({{5.5f, 5.5f}, {13, 5.5f}, {13, 13}, {5.5f, 13}}, true);
            pen.path({{10.5f, 3}, {3, 3}, {3, 10.5f}});
            break;
        case Icon::remove:
            pen.path({{3.5f, 8}, {12.5f, 8}});
            break;
        case Icon::close:
            pen.path({{4, 4}, {12, 12}});
            pen.path({{12, 4}, {4, 12}});
            break;
        case Icon::fit:
            pen.path({{2, 5.5f}, {2, 2}, {5.5f, 2}});
            pen.path({{10.5f, 2}, {14, 2}, {14, 5.5f}});
            pen.path({{14, 10.5f}, {14, 14}, {10.5f, 14}});
            pen.path({{5.5f, 14}, {2, 14}, {2, 10.5f}});
            break;
        case Icon::beam:
            pen.path({{2, 8}, {14, 3.5f}});
            pen.path({{2, 8}, {14, 12.5f}});
            pen.path({{14, 2}, {14, 14}});
            break;
        case Icon::theme:
            pen.arc({8, 8}, 5.5f, 0.0f, 6.2832f);
            pen.half_disc({8, 8}, 5.5f);
            break;
        default:
            break;
    }
}

void draw_icon(Pen& pen, Icon icon) {
    if (icon == Icon::undo || icon == Icon::redo) return draw_turn(pen, icon == Icon::redo);
    draw_file_icon(pen, icon);
    draw_small_icon(pen, icon);
}

}  // namespace

float icon_button_side(const Theme& theme) {
    return theme.px(28);
}

bool icon_button(const Theme& theme, Icon icon, const std::string& tip, bool enabled) {
    const float side = icon_button_side(theme);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::PushID(static_cast<int>(icon));
    ImGui::BeginDisabled(!enabled);
    const bool pressed = ImGui::InvisibleButton("##icon", {side, side});
    ImGui::EndDisabled();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const bool hovered = ImGui::IsItemHovered() && enabled;
    if (hovered)
        list.AddRectFilled(at, {at.x + side, at.y + side}, packed(theme.colour.line), theme.px(6));
    const ImU32 colour =
        packed(hovered ? theme.colour.text : theme.colour.quiet, enabled ? 1.0f : 0.4f);
    const float inset = std::round((side - theme.px(16)) / 2.0f);
    Pen pen(list, {at.x + inset, at.y + inset}, theme.px(16) / 16.0f, colour);
    if (icon == Icon::keys)
        paint_text(list, theme.font.body,
                   {at.x + (side - text_width(theme.font.body, "?")) / 2.0f, at.y + theme.px(4)},
                   hovered ? theme.colour.text : theme.colour.quiet, "?");
    else
        draw_icon(pen, icon);
    ImGui::PopID();
    hint(theme, tip);
    return pressed;
}

}  // namespace rakeline::desk
