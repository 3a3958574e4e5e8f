// SPDX-License-Identifier: MIT
#include "desk/frame.hpp"

#include "desk/figure_view.hpp"
#include "desk/seat_steps.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

struct Place {
    ImVec2 at, size;
};

/// Where everything goes. The room fills the middle; numbers stand at its sides.
struct Plan {
    Place top, rail, subject, hall, drawing, findings, card, status;
};

Plan plan(const Theme& t, const Workspace& w, ImVec2 display) {
    const float top = t.px(46), status = t.px(30), rail = t.px(92);
    const float side = std::round(std::clamp(display.x * 0.235f, t.px(290), t.px(360)));
    const float right = std::round(std::clamp(display.x * 0.215f, t.px(280), t.px(350)));
    const float height = std::max(display.y - top - status, t.px(100));
    const float middle = std::max(display.x - rail - side - right, t.px(60));
    const float hall = std::round(height * w.hall_share);
    const bool nothing = w.selected.kind == drawing::Shows::Kind::nothing;
    const float findings = std::round(height * (nothing ? 0.70f : 0.40f));
    const float left = rail + side;
    return {{{0, 0}, {display.x, top}},
            {{0, top}, {rail, height}},
            {{rail, top}, {side, height}},
            {{left, top}, {middle, hall}},
            {{left, top + hall}, {middle, height - hall}},
            {{left + middle, top}, {right, findings}},
            {{left + middle, top + findings}, {right, height - findings}},
            {{0, top + height}, {display.x, status}}};
}

using DrawPanel = void (*)(const PanelInput&, Workspace&, Requests&);

/// A panel: its name, what draws it, where it stands, its ground and its margin.
struct PanelRow {
    const char* name;
    DrawPanel draw;
    Place Plan::*place;
    ImVec4 Palette::*ground;
    bool margin;
    bool line_right, line_below;  ///< hairlines toward its neighbours
    bool of_study;                ///< all that it says is of the study
};

constexpr PanelRow kPanels[] = {
    {"##top", draw_top_bar, &Plan::top, &Palette::panel, false, false, true, false},
    {"##rail", draw_rail, &Plan::rail, &Palette::panel, false, false, false, true},
    {"##subject", draw_subject_panel, &Plan::subject, &Palette::ground, true, true, false, false},
    {"##hall", draw_hall_panel, &Plan::hall, &Palette::ground, false, true, true, true},
    {"##drawing", draw_drawing_panel, &Plan::drawing, &Palette::ground, false, true, false, false},
    {"##findings", draw_findings_panel, &Plan::findings, &Palette::ground, true, false, false,
     true},
    {"##card", draw_card_panel, &Plan::card, &Palette::ground, true, false, false, true},
    {"##status", draw_status_bar, &Plan::status, &Palette::panel, false, false, false, true},
};

void draw_edges(const PanelRow& row, const Place& place, const Theme& t) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(t.colour.line);
    const ImVec2 end{place.at.x + place.size.x, place.at.y + place.size.y};
    list.PushClipRect(place.at, end);
    if (row.line_right) list.AddRectFilled({end.x - 1.0f, place.at.y}, end, ink);
    if (row.line_below) list.AddRectFilled({place.at.x, end.y - 1.0f}, end, ink);
    list.PopClipRect();
}

void draw_panel(
    const PanelRow& row, const Plan& where, const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    const Place& place = where.*row.place;
    ImGui::SetNextWindowPos(place.at);
    ImGui::SetNextWindowSize(place.size);
    ImGui::PushStyleColor(ImGuiCol_WindowBg, t.colour.*row.ground);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 0.0f);
    if (!row.margin) ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0f, 0.0f});
    constexpr ImGuiWindowFlags kFixed =
        ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
        ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse;
    const bool visible = ImGui::Begin(row.name, nullptr, kFixed);
    ImGui::PopStyleVar(row.margin ? 1 : 2);
    ImGui::PopStyleColor();
    ImGui::PushFont(t.font.body);
    if (visible) row.draw(in, w, out);
    ImGui::PopFont();
    draw_edges(row, place, t);
    ImGui::End();
}

void draw_seam_handle(const Theme& t, const Plan& p, Workspace& w) {
    const float y = p.hall.at.y + p.hall.size.y;
    ImGui::SetNextWindowPos({p.hall.at.x, y - t.px(4)});
    ImGui::SetNextWindowSize({p.hall.size.x, t.px(8)});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0.0f, 0.0f});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowMinSize, {1.0f, 1.0f});
    ImGui::Begin("##seam", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoBackground |
                     ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoFocusOnAppearing);
    ImGui::InvisibleButton("##handle", {p.hall.size.x, t.px(8)});
    if (ImGui::IsItemHovered() || ImGui::IsItemActive())
        ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeNS);
    if (ImGui::IsItemActive()) {
        const float whole = p.hall.size.y + p.drawing.size.y;
        w.hall_share = std::clamp((ImGui::GetIO().MousePos.y - p.hall.at.y) / whole, 0.25f, 0.85f);
    }
    ImGui::End();
    ImGui::PopStyleVar(2);
}

}  // namespace

void draw_frame(const PanelInput& in, Workspace& w, Requests& out) {
    if (in.study) {
        clamp_choices(w, *in.study);
        take_seat_step(w, *in.study);
    }
    const Plan where = plan(in.theme, w, ImGui::GetIO().DisplaySize);
    w.hovered = {};
    const PanelInput shown = of_study(in);
    for (const PanelRow& row : kPanels)
        draw_panel(row, where, row.of_study ? shown : in, w, out);
    draw_seam_handle(in.theme, where, w);
    ImGui::PushFont(in.theme.font.body);
    draw_lenses(shown, w, out);
    draw_widths(shown, w, out);
    draw_change(shown, w, out);
    draw_sheets(shown, w, out);
    draw_meter(shown, w, out);
    draw_rake(in, w, out);
    draw_floor_numbers(in, w, out);
    draw_derivation(shown, w, out);
    draw_cautions(in, w, out);
    draw_keys(in, w, out);
    ImGui::PopFont();
}

}  // namespace rakeline::desk
