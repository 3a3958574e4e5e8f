// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/text.hpp"
#include "report/report.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

void working_row(const Theme& t, const study::WorkingStep& step, base::UnitSystem units) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    text_line(t.font.small_figures, t.colour.text, step.symbol);
    ImGui::TableNextColumn();
    text_wrapped(t.font.small, t.colour.quiet, step.meaning);
    ImGui::TableNextColumn();
    text_line(t.font.small_figures, t.colour.text, base::quantity_text(step.si, step.unit, units));
}

void working_table(const Theme& t, const study::Derivation& d, base::UnitSystem units) {
    if (d.inputs.empty() || !ImGui::BeginTable("working", 3, ImGuiTableFlags_BordersInnerH)) return;
    ImGui::TableSetupColumn("symbol", ImGuiTableColumnFlags_WidthFixed, t.px(72));
    ImGui::TableSetupColumn("meaning", ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthFixed, t.px(110));
    for (const study::WorkingStep& step : d.inputs)
        working_row(t, step, units);
    ImGui::EndTable();
}

void derivation_body(const PanelInput& in, const study::Derivation& d) {
    const Theme& t = in.theme;
    const study::FigureDefinition& definition = *d.definition;
    text_wrapped(t.font.small, t.colour.quiet, d.what);
    text_wrapped(t.font.body, t.colour.text, definition.meaning);
    hairline(t);
    text_wrapped(t.font.small, t.colour.lamp, definition.formula);
    working_table(t, d, in.units());
    for (const std::string& note : d.notes)
        text_wrapped(t.font.small, t.colour.quiet, note);
    hairline(t);
    if (d.result)
        text_line(t.font.title, t.colour.text,
                  base::quantity_text(*d.result, definition.unit, in.units()));
    for (const room::Limit* limit : d.limits)
        text_wrapped(t.font.small, t.colour.text,
                     "limit " + limit_text(*limit, definition.unit, in.units()));
    text_wrapped(t.font.small, t.colour.quiet, std::string("source: ") + definition.source);
}

std::string copied_text(const study::Derivation& d, base::UnitSystem units) {
    std::string text;
    for (const std::string& line : study::derivation_text(d, units))
        text += line + "\n";
    return text;
}

}  // namespace

void draw_derivation(const PanelInput& in, Workspace& w, Requests&) {
    if (!w.pinned || !in.study) return;
    const study::Figure* figure = study::find_figure(*in.study, w.pinned->id, w.pinned->place);
    if (!figure || !study::value_at(*figure, w.pinned->index)) {
        w.pinned.reset();
        return;
    }
    const Theme& t = in.theme;
    if (w.pinned->just_opened) {
        const ImVec2 mouse = ImGui::GetIO().MousePos, display = ImGui::GetIO().DisplaySize;
        const float x =
            std::clamp(mouse.x + t.px(330), 0.0f, std::max(0.0f, display.x - t.px(480)));
        const float y =
            std::clamp(mouse.y - t.px(80), t.px(56), std::max(t.px(56), display.y * 0.4f));
        ImGui::SetNextWindowPos({x, y});
        ImGui::SetNextWindowFocus();
        w.pinned->just_opened = false;
    }
    const study::Derivation d = study::derive(*in.study, *figure, w.pinned->index);
    const bool open = begin_floating(t, "##derivation", d.definition->label, t.px(460));
    derivation_body(in, d);
    if (word_button(t, "Copy as text")) ImGui::SetClipboardText(copied_text(d, in.units()).c_str());
    ImGui::End();
    if (!open) w.pinned.reset();
}

void draw_keys(const PanelInput& in, Workspace& w, Requests&) {
    if (!w.keys_open) return;
    constexpr std::pair<const char*, const char*> kKeys[] = {
        {"1 … 5", "room, picture, light, sight, sound"},
        {"F", "fit the hall into the view"},
        {"B", "show or hide the beams"},
        {"P", "the next drawing below the room"},
        {"E", "the picture as the selected seat sees it, or the hall again"},
        {"← → ↑ ↓", "the seat beside, in front, behind"},
        {"Esc", "let go of the selection, close what floats"},
        {"Ctrl Z", "undo"},
        {"Ctrl Shift Z, Ctrl Y", "redo"},
        {"Ctrl O", "open a room"},
        {"Ctrl S", "save"},
        {"Ctrl Shift S", "save as"},
        {"Ctrl +, Ctrl −", "larger, smaller text"},
        {"drag, right drag, wheel", "turn the view, move it, come nearer"},
        {"drag a floor handle",
         "in the long section: lifts the row and those behind it; Shift the "
         "row alone, Ctrl the whole block; Alt without steps"},
        {"double-click a handle", "type its number; Esc while dragging puts it back"},
        {"drag a number", "change it; Shift ten times faster, Alt ten times slower"},
        {"click a number", "type it: 40 ft 6 in, 350 mm, 14 fL; Tab goes to the next"},
        {"click a figure", "how it is worked out"}};
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, display.y / 2.0f}, ImGuiCond_Always, {0.5f, 0.5f});
    if (!begin_floating(t, "##keys", "Keys", t.px(560))) w.keys_open = false;
    for (const auto& [key, what] : kKeys) {
        text_line(t.font.small_figures, t.colour.lamp, key);
        ImGui::SameLine(t.px(200));
        text_wrapped(t.font.small, t.colour.text, what);
    }
    ImGui::End();
}

void draw_cautions(const PanelInput& in, Workspace& w, Requests&) {
    if (!w.cautions_open) return;
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, display.y / 2.0f}, ImGuiCond_Always, {0.5f, 0.5f});
    if (!begin_floating(t, "##cautions", "Cautions", t.px(640))) w.cautions_open = false;
    for (const report::Caution& caution : report::cautions()) {
        text_line(t.font.body, t.colour.lamp, caution.title);
        text_wrapped(t.font.small, t.colour.text, caution.text);
    }
    ImGui::End();
}

}  // namespace rakeline::desk
