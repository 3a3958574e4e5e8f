// SPDX-License-Identifier: MIT
#include "desk/format_changes.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

const std::string& format_name(const PanelInput& in, int format) {
    return in.study->layout().formats[static_cast<std::size_t>(format)].name;
}

const std::string& machine_name(const PanelInput& in, int projector) {
    return in.study->layout().projectors[static_cast<std::size_t>(projector)].name;
}

/// A table of words: a wide first column, the others alike.
bool begin_columns(const Theme& t, const char* id, const std::vector<std::string>& heads) {
    constexpr ImGuiTableFlags kFlags = ImGuiTableFlags_BordersInnerH;
    if (!ImGui::BeginTable(id, static_cast<int>(heads.size()) + 1, kFlags)) return false;
    ImGui::TableSetupColumn("##what", ImGuiTableColumnFlags_WidthFixed, t.px(230));
    for (const std::string& head : heads)
        ImGui::TableSetupColumn(head.c_str(), ImGuiTableColumnFlags_WidthStretch);
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    for (const std::string& head : heads) {
        ImGui::TableNextColumn();
        text_line(t.font.small, t.colour.quiet, head);
    }
    return true;
}

/// Text in a cell of a table, cut to its width; whole in the tooltip, with what it means.
void cell_text(const Theme& t, const ImVec4& ink, const std::string& text, const std::string& tip) {
    text_line(t.font.small_figures, ink,
              fitted(t.font.small_figures, text, ImGui::GetContentRegionAvail().x));
    hint(t, text, tip);
}

void draw_cell(const PanelInput& in, const study::SheetCell& cell) {
    const Theme& t = in.theme;
    ImGui::TableNextColumn();
    if (cell.empty()) return text_line(t.font.small, t.colour.quiet, "–");
    const std::string mark = study::verdict_mark(cell.verdict);
    if (!mark.empty()) {
        text_line(t.font.small, verdict_colour(t.colour, cell.verdict), mark);
        ImGui::SameLine(0.0f, t.px(6));
    }
    const bool missed = cell.verdict == study::Verdict::missed;
    cell_text(t, missed ? t.colour.missed : t.colour.text, cell.text(in.units()),
              cell_meaning(cell));
}

void draw_label(const Theme& t, const std::string& label) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    text_line(t.font.small, t.colour.quiet,
              fitted(t.font.small, label, ImGui::GetContentRegionAvail().x));
}

void draw_part(const PanelInput& in, const study::ChangeSheet& sheet, study::SheetPart part) {
    const bool any = std::any_of(sheet.rows.begin(), sheet.rows.end(),
                                 [&](const study::SheetRow& row) { return row.part == part; });
    if (!any) return;
    group_heading(in.theme, part == study::SheetPart::set ? "What is set" : "What comes of it");
    std::vector<std::string> heads;
    for (const int format : sheet.formats)
        heads.push_back(format_name(in, format));
    if (!begin_columns(in.theme, part == study::SheetPart::set ? "set" : "gives", heads)) return;
    for (const study::SheetRow& row : sheet.rows) {
        if (row.part != part) continue;
        draw_label(in.theme, row.label);
        for (const study::SheetCell& cell : row.cells)
            draw_cell(in, cell);
    }
    ImGui::EndTable();
}

/// "2.20 is not among this projector's formats."
void draw_notes(const PanelInput& in, const study::ChangeSheet& sheet) {
    const Theme& t = in.theme;
    std::string others;
    for (const int format : sheet.not_made)
        others += (others.empty() ? "" : ", ") + format_name(in, format);
    if (!others.empty())
        text_wrapped(t.font.small, t.colour.quiet, "Not among this projector's formats: " + others);
    for (const std::string& note : sheet.notes)
        text_wrapped(t.font.small, t.colour.lamp, note);
}

/// One of the sheet's formats by a row of buttons; the one pressed, else `on`.
int choose_format(const PanelInput& in,
                  const study::ChangeSheet& sheet,
                  const char* words,
                  int on) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, {at.x, at.y + t.px(7)}, t.colour.quiet,
               words);
    ImGui::SetCursorPosX(ImGui::GetCursorPosX() + t.px(40));
    std::vector<std::string> names;
    for (const int format : sheet.formats)
        names.push_back(format_name(in, format));
    const auto found = std::find(sheet.formats.begin(), sheet.formats.end(), on);
    const int pressed = segmented(t, words, names, static_cast<int>(found - sheet.formats.begin()));
    return pressed < 0 ? on : sheet.formats[static_cast<std::size_t>(pressed)];
}

void draw_moves(const PanelInput& in, Workspace& w, const ChangeCache& cache) {
    const Theme& t = in.theme;
    group_heading(t, "Moves from one format to another");
    const int from = choose_format(in, cache.sheet, "from", w.change.from);
    ImGui::SameLine(0.0f, t.px(24));
    const int to = choose_format(in, cache.sheet, "to", w.change.to);
    if (cache.moves.empty())
        text_wrapped(t.font.body, t.colour.quiet, "Nothing changes between these two.");
    else
        text_wrapped(t.font.small, t.colour.quiet, study::kMovesDefer);
    for (std::size_t i = 0; i < cache.moves.size(); ++i) {
        const study::Move& move = cache.moves[i];
        text_line(t.font.small_figures, t.colour.lamp, std::to_string(i + 1));
        ImGui::SameLine(t.px(30));
        ImGui::BeginGroup();
        text_wrapped(t.font.body, t.colour.text, move.text(in.units()));
        if (!move.caution.empty()) text_wrapped(t.font.small, t.colour.lamp, "△ " + move.caution);
        ImGui::EndGroup();
    }
    // Pressing the other one's format turns the change round.
    if (from != w.change.from) {
        if (from == w.change.to) w.change.to = w.change.from;
        w.change.from = from;
    } else if (to != w.change.to) {
        if (to == w.change.from) w.change.from = w.change.to;
        w.change.to = to;
    }
}

void draw_sheet(const PanelInput& in, Workspace& w, const ChangeCache& cache) {
    const Theme& t = in.theme;
    if (cache.sheet.formats.empty())
        text_wrapped(t.font.body, t.colour.quiet, "This projector makes no format.");
    draw_part(in, cache.sheet, study::SheetPart::set);
    draw_part(in, cache.sheet, study::SheetPart::gives);
    draw_notes(in, cache.sheet);
    if (cache.sheet.formats.size() > 1) draw_moves(in, w, cache);
}

/// The machine that the chosen format would move to, where there is more than one other.
void choose_machine(const PanelInput& in, Workspace& w) {
    std::vector<int> others;
    std::vector<std::string> names;
    int on = -1;
    for (int p = 0; p < static_cast<int>(in.study->layout().projectors.size()); ++p) {
        if (p == w.projector) continue;
        if (p == w.change.machine) on = static_cast<int>(others.size());
        others.push_back(p);
        names.push_back(machine_name(in, p));
    }
    if (others.size() < 2) return;
    const int pressed = segmented(in.theme, "machine", names, on);
    if (pressed >= 0) w.change.machine = others[static_cast<std::size_t>(pressed)];
}

void draw_side(const PanelInput& in, const study::MachineSide& side) {
    const Theme& t = in.theme;
    text_wrapped(t.font.body, t.colour.text, machine_name(in, side.projector));
    if (!side.proposal.empty()) text_wrapped(t.font.small, t.colour.lamp, side.proposal);
    text_wrapped(t.font.small, t.colour.quiet, side.lens(in.units()));
}

void draw_machines(const PanelInput& in, Workspace& w, const ChangeCache& cache) {
    const Theme& t = in.theme;
    choose_machine(in, w);
    if (!cache.machine) return;
    const study::MachineChange& change = *cache.machine;
    text_wrapped(t.font.body, t.colour.text,
                 "If " + format_name(in, change.format) + " moved from " +
                     machine_name(in, change.from.projector) + " to " +
                     machine_name(in, change.to.projector));
    const std::vector<std::string> heads{machine_name(in, change.from.projector),
                                         machine_name(in, change.to.projector), "difference"};
    if (begin_columns(t, "machines", heads)) {
        for (const study::MachineRow& row : change.rows) {
            draw_label(t, row.label);
            draw_cell(in, row.from);
            draw_cell(in, row.to);
            ImGui::TableNextColumn();
            text_line(t.font.small_figures, t.colour.quiet, row.difference(in.units()));
        }
        ImGui::EndTable();
    }
    draw_side(in, change.from);
    draw_side(in, change.to);
}

void draw_body(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    const bool two = in.study->layout().projectors.size() > 1;
    if (!two) w.change.machines = false;
    if (two) {
        const int tab = segmented(t, "tab", {"Formats of this machine", "Another machine"},
                                  w.change.machines ? 1 : 0);
        if (tab >= 0) w.change.machines = tab == 1;
    }
    const ChangeCache& cache = format_changes(in, w);
    const float room = ImGui::GetIO().DisplaySize.y * 0.86f - ImGui::GetCursorPosY() - t.px(18);
    ImGui::BeginChild(w.change.machines ? "machines" : "sheet",
                      {0.0f, std::clamp(w.change.height, t.px(80), std::max(room, t.px(90)))},
                      false, ImGuiWindowFlags_NoBackground);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {t.px(8), t.px(4)});
    w.change.machines ? draw_machines(in, w, cache) : draw_sheet(in, w, cache);
    ImGui::PopStyleVar();
    w.change.height = ImGui::GetCursorPosY() + t.px(4);  // what the next frame makes room for
    ImGui::EndChild();
}

}  // namespace

void draw_change(const PanelInput& in, Workspace& w, Requests&) {
    if (!w.change.open || !in.study) return;
    const room::Layout& layout = in.study->layout();
    if (layout.projectors.empty() || layout.formats.empty()) {
        w.change.open = false;
        return;
    }
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, t.px(64)}, ImGuiCond_Appearing, {0.5f, 0.0f});
    const float width = std::min(t.px(960), display.x - t.px(32));
    const std::string title = "Format change · " + machine_name(in, w.projector);
    const bool open = begin_floating(t, "##change", title, width);
    draw_body(in, w);
    ImGui::End();
    if (!open) w.change.open = false;
}

}  // namespace rakeline::desk
