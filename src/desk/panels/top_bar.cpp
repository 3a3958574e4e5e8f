// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

constexpr float kBarHeight = 46.0f;

std::vector<std::string> format_names(const room::Layout& layout) {
    std::vector<std::string> names;
    for (const room::Format& format : layout.formats)
        names.push_back(format.name);
    return names;
}

std::vector<std::string> projector_names(const room::Layout& layout) {
    std::vector<std::string> names;
    for (const room::Projector& projector : layout.projectors)
        names.push_back(projector.name);
    return names;
}

/// "edited · 240 seats · film and digital"
std::string room_words(const PanelInput& in) {
    std::string words = in.edited ? "edited" : "saved";
    if (in.study) words += " · " + std::to_string(in.study->seats.seats.size()) + " seats";
    bool film = false, digital = false;
    for (const room::Projector& projector : in.brief.layout.projectors)
        (projector.kind == room::SourceKind::film ? film : digital) = true;
    if (film || digital)
        words += film && digital ? " · film and digital" : film ? " · film" : " · digital";
    return words;
}

std::string studied_words(const PanelInput& in) {
    if (!in.problems.empty()) return in.study ? "last valid study" : "can't be studied";
    if (in.studying || !in.current) return "studying…";
    return "studied " + base::fixed_text(in.studied_s * 1000.0, 1) + " ms";
}

void draw_name(const PanelInput& in, float room) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::string name = fitted(t.font.title, in.brief.layout.name, room);
    paint_text(list, t.font.title, {at.x, at.y + t.px(2)}, t.colour.text, name);
    const float name_width = text_width(t.font.title, name);
    const float left = at.x + name_width + t.px(14);
    const std::string words =
        fitted(t.font.small, room_words(in), std::max(room - name_width - t.px(14), t.px(50)));
    paint_text(list, t.font.small, {left, at.y + t.px(8)},
               in.edited ? t.colour.lamp : t.colour.quiet, words);
    ImGui::Dummy({std::max(room, 1.0f), t.px(28)});
    hint(t, in.brief.layout.note.empty() ? in.title : in.brief.layout.note,
         in.title + (in.edited ? ", with edits that are not saved" : ""));
}

void draw_report_menu(const PanelInput& in, Requests& out) {
    const Theme& t = in.theme;
    if (icon_button(t, Icon::report, "Reports and exports", in.study != nullptr))
        ImGui::OpenPopup("reports");
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {t.px(10), t.px(10)});
    if (ImGui::BeginPopup("reports")) {
        constexpr std::pair<const char*, Action> kItems[] = {
            {"Report of the room (PDF)…", Action::report_pdf},
            {"Table of the seats (CSV)…", Action::seat_csv},
            {"Long section (PNG)…", Action::section_png},
            {"Plan (PNG)…", Action::plan_png}};
        for (const auto& [words, action] : kItems)
            if (ImGui::MenuItem(words)) out.actions.push_back(action);
        ImGui::EndPopup();
    }
    ImGui::PopStyleVar();
}

void draw_actions(const PanelInput& in, Requests& out) {
    const Theme& t = in.theme;
    const auto press = [&](Icon icon, const std::string& tip, Action action, bool enabled = true) {
        if (icon_button(t, icon, tip, enabled)) out.actions.push_back(action);
        ImGui::SameLine(0.0f, 0.0f);
    };
    press(Icon::add, "New room", Action::new_room);
    press(Icon::open, "Open a room · Ctrl O", Action::open);
    press(Icon::save, "Save · Ctrl S\nSave as · Ctrl Shift S", Action::save);
    const History& h = in.history;
    press(Icon::undo, h.can_undo() ? "Undo: " + h.undo_label() + " · Ctrl Z" : "Nothing to undo",
          Action::undo, h.can_undo());
    press(Icon::redo,
          h.can_redo() ? "Redo: " + h.redo_label() + " · Ctrl Shift Z" : "Nothing to redo",
          Action::redo, h.can_redo());
    draw_report_menu(in, out);
}

void draw_units(const PanelInput& in, Workspace& w) {
    const bool imperial = w.settings.units == base::UnitSystem::imperial;
    const int pressed = segmented(in.theme, "units", {"m", "ft"}, imperial ? 1 : 0);
    if (pressed >= 0)
        w.settings.units = pressed == 1 ? base::UnitSystem::imperial : base::UnitSystem::metric;
}

/// The right-hand controls, laid from a place that leaves them all their room.
struct Choices {
    std::vector<std::string> formats, projectors;
    bool as_list = false;  ///< formats in a drop-down: too many to stand side by side
    float formats_width = 0.0f, projector_width = 0.0f, units_width = 0.0f, studied_width = 0.0f;
    float total = 0.0f;
};

Choices measure(const PanelInput& in) {
    const Theme& t = in.theme;
    Choices c{format_names(in.brief.layout), projector_names(in.brief.layout)};
    const float window = ImGui::GetWindowWidth();
    c.formats_width = segmented_width(t, c.formats);
    c.as_list = c.formats_width > window * 0.19f;
    if (c.as_list) c.formats_width = t.px(110);
    c.projector_width = std::min(t.px(170), window * 0.13f);
    c.units_width = segmented_width(t, {"m", "ft"});
    c.studied_width = t.px(100);
    c.total = t.px(54) + c.formats_width + c.projector_width + c.units_width + c.studied_width +
              2.0f * icon_button_side(t) + 3.0f * t.px(14) + t.px(12);
    return c;
}

void draw_choices(const PanelInput& in, Workspace& w, const Choices& c) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, {at.x, at.y + t.px(7)}, t.colour.quiet,
               "format");
    ImGui::SetCursorPosX(ImGui::GetCursorPosX() + t.px(54));
    const int format = c.as_list ? dropdown(t, "##format", c.formats, w.format, c.formats_width)
                                 : segmented(t, "format", c.formats, w.format, Tone::lamp);
    if (format >= 0) w.format = format;
    ImGui::SameLine(0.0f, t.px(14));
    const int projector = dropdown(t, "##projector", c.projectors, w.projector, c.projector_width);
    if (projector >= 0) {
        w.projector = projector;
        if (w.selected.kind == drawing::Shows::Kind::projector) w.selected.index = projector;
    }
    hint(t, "The projector that is looked at");
    ImGui::SameLine(0.0f, t.px(14));
    draw_units(in, w);
    ImGui::SameLine(0.0f, t.px(14));
    const ImVec2 studied = ImGui::GetCursorScreenPos();
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, {studied.x, studied.y + t.px(7)},
               in.problems.empty() ? t.colour.quiet : t.colour.missed, studied_words(in));
    ImGui::Dummy({c.studied_width, t.px(28)});
    ImGui::SameLine(0.0f, 0.0f);
    if (icon_button(t, Icon::theme, t.paper ? "Dark theme" : "Paper theme"))
        w.settings.paper = !w.settings.paper;
    ImGui::SameLine(0.0f, 0.0f);
    if (icon_button(t, Icon::keys, "Keys · ?")) w.keys_open = !w.keys_open;
}

}  // namespace

void draw_top_bar(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    const Choices choices = measure(in);
    const float top = (t.px(kBarHeight) - t.px(28)) / 2.0f;
    const float actions = 6.0f * icon_button_side(t);
    const float margin = t.px(18);
    const float window = ImGui::GetWindowWidth();
    ImGui::SetCursorPos({margin, top});
    const float name_room = window - 2.0f * margin - choices.total - actions - t.px(16);
    draw_name(in, name_room);
    ImGui::SetCursorPos({window - margin - choices.total - actions, top});
    draw_actions(in, out);
    ImGui::SetCursorPos({window - margin - choices.total + t.px(14), top});
    draw_choices(in, w, choices);
}

}  // namespace rakeline::desk
