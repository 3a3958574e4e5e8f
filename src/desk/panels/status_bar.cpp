// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/text.hpp"

namespace rakeline::desk {
namespace {

std::string hint_words(const PanelInput& in, const Workspace& w) {
    if (!w.notice.empty()) return w.notice;
    if (in.study) {
        const std::string hovered = name_of(*in.study, w.hovered);
        if (!hovered.empty()) return hovered + "  ·  click to select";
        const std::string selected = name_of(*in.study, w.selected);
        if (!selected.empty()) return selected + " selected  ·  Esc lets go  ·  ? shows the keys";
    }
    return "Drag turns the view, right drag moves it, the wheel comes nearer  ·  drag a number to "
           "change it, click to type  ·  ? shows the keys";
}

}  // namespace

void draw_status_bar(const PanelInput& in, Workspace& w, Requests&) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetWindowPos();
    const float width = ImGui::GetWindowWidth();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    std::string limits = "limits: " + in.brief.limits.name;
    if (in.study) {
        const LimitCount count = count_limits(*in.study);
        limits += ", " + std::to_string(count.hold) + " of " + std::to_string(count.all) + " hold";
    }
    if (in.sampling)
        limits = "drawing crowds: " + std::to_string(in.sampling->drawn) + " so far  ·  " + limits;
    const float y = at.y + t.px(7);
    const float limits_width = text_width(t.font.small, limits);
    paint_text_right(list, t.font.small, {at.x + width - t.px(18), y}, t.colour.quiet, limits);
    const float room = width - limits_width - t.px(60);
    paint_text(list, t.font.small, {at.x + t.px(18), y}, t.colour.quiet,
               fitted(t.font.small, hint_words(in, w), room));
}

}  // namespace rakeline::desk
