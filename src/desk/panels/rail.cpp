// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/text.hpp"

namespace rakeline::desk {
namespace {

constexpr float kTabHeight = 72.0f;

void paint_mark(const Theme& t, ImVec2 centre, study::Verdict verdict) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (verdict == study::Verdict::no_limit) {
        list.AddCircle(centre, t.px(3), packed(t.colour.quiet), 0, 1.2f * t.scale);
        return;
    }
    const std::string mark = study::verdict_mark(verdict);
    paint_text(list, t.font.body,
               {centre.x - text_width(t.font.body, mark) / 2.0f, centre.y - t.px(9)},
               verdict_colour(t.colour, verdict), mark);
}

bool tab(const PanelInput& in, const char* name, study::Verdict verdict, bool open, float width) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size{width, t.px(kTabHeight)};
    const bool pressed = ImGui::InvisibleButton(name, size);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float inset = t.px(8);
    if (open || ImGui::IsItemHovered())
        list.AddRectFilled({at.x + inset, at.y}, {at.x + size.x - inset, at.y + size.y},
                           packed(t.colour.raised, open ? 1.0f : 0.5f), t.px(8));
    if (open)
        list.AddRectFilled({at.x, at.y + t.px(14)}, {at.x + t.px(3), at.y + size.y - t.px(14)},
                           packed(t.colour.lamp), t.px(2));
    const float middle = at.x + size.x / 2.0f;
    paint_mark(t, {middle, at.y + t.px(24)}, verdict);
    paint_text(list, t.font.body, {middle - text_width(t.font.body, name) / 2.0f, at.y + t.px(40)},
               open ? t.colour.text : t.colour.quiet, name);
    return pressed;
}

}  // namespace

void draw_rail(const PanelInput& in, Workspace& w, Requests&) {
    ImGui::SetCursorPos({0.0f, in.theme.px(12)});
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {0.0f, in.theme.px(6)});
    int number = 1;
    for (const study::Subject subject : study::kSubjects) {
        ImGui::SetCursorPosX(0.0f);
        const study::Verdict verdict =
            in.study ? study::subject_verdict(*in.study, subject) : study::Verdict::no_limit;
        const char* name = study::subject_title(subject);
        if (tab(in, name, verdict, w.subject == subject, ImGui::GetWindowWidth()))
            w.subject = subject;
        hint(in.theme,
             std::string(name) + ": " + study::verdict_word(verdict) + " · key " +
                 std::to_string(number),
             "The worst mark over all projectors and formats; the panel shows the chosen ones.");
        ++number;
    }
    ImGui::PopStyleVar();
}

}  // namespace rakeline::desk
