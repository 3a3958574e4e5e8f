// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "desk/delay_choice.hpp"
#include "desk/figure_view.hpp"
#include "desk/layout_edits.hpp"
#include "desk/loudspeaker_choice.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/caution_line.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/field_editor.hpp"
#include "desk/widgets/figure_row.hpp"
#include "desk/widgets/text.hpp"
#include "sound/sound_study.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

/// "at F11 · 12.1 A1 to 38.2 N20"
std::string span_note(const PanelInput& in, const study::Figure& figure, const Extent& e) {
    const auto name = [&](const Extreme& x) {
        const bool band = figure.definition->axis() == study::Axis::band;
        return study::index_name(*in.study, *figure.definition, x.index) + (band ? " Hz" : "");
    };
    const auto part = [&](const Extreme& x) {
        return base::quantity(x.si, figure.definition->unit, in.units()).number + " " + name(x);
    };
    return "at " + name(e.worst) + "  ·  " + part(e.least) + "  to  " + part(e.greatest);
}

drawing::Shows shows_of(const study::Figure& figure, int index) {
    using Kind = drawing::Shows::Kind;
    if (figure.definition->axis() == study::Axis::seat) return {Kind::seat, index};
    if (figure.definition->axis() == study::Axis::row) return {Kind::row, index};
    return {};
}

void draw_figure(const PanelInput& in, Workspace& w, const study::Figure& figure) {
    const auto e = extent(*in.study, figure);
    if (!e) return;
    FigureRowWords words{figure.definition->label, {}};
    if (figure.definition->axis() != study::Axis::none) words.note = span_note(in, figure, *e);
    if (!figure_row(in.theme, *in.study, figure, e->worst.si, e->worst.verdict, in.units(), words))
        return;
    const study::Place place{figure.projector, figure.format, figure.loudspeaker, {}, {},
                             figure.band};
    w.pinned = PinnedFigure{figure.definition->id, place, e->worst.index};
    const drawing::Shows shows = shows_of(figure, e->worst.index);
    if (shows.kind != drawing::Shows::Kind::nothing) w.selected = shows;
    if (shows.kind == drawing::Shows::Kind::seat) w.seat_figure = figure.definition->id;
}

/// The loudspeaker and band that the sound figures are shown for.
void draw_sound_choice(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    std::vector<std::string> names, bands;
    for (const room::Loudspeaker& l : in.study->layout().loudspeakers)
        names.push_back(l.name);
    for (const double hz : sound::kOctaves)
        bands.push_back(base::quantity_text(hz, base::Unit::hertz));
    const float width = ImGui::GetContentRegionAvail().x;
    const int speaker = dropdown(t, "##loudspeaker", names, w.loudspeaker, width * 0.6f);
    hint(t, "The loudspeaker that is looked at");
    if (speaker >= 0) {
        w.loudspeaker = speaker;
        w.selected = {drawing::Shows::Kind::loudspeaker, speaker};
    }
    ImGui::SameLine(0.0f, t.px(8));
    const int band = dropdown(t, "##band", bands, w.band, width * 0.4f - t.px(8));
    hint(t, "The octave band that is looked at");
    if (band >= 0) w.band = band;
}

/// What floats beside the picture's figures: for as long as the hand needs it.
void draw_picture_tools(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    const float width = (ImGui::GetContentRegionAvail().x - t.px(8)) / 2.0f;
    if (word_button(t, "Choose a lens", width)) w.toggle_middle(w.lenses_open);
    hint(t, "The lenses ranked for this projector and format");
    ImGui::SameLine(0.0f, t.px(8));
    if (word_button(t, "Format change", width)) w.toggle_middle(w.change.open);
    hint(t, "All formats of this projector side by side, and what a change asks for");
}

void draw_light_tools(const PanelInput& in, Workspace& w) {
    if (word_button(in.theme, "Meter readings", ImGui::GetContentRegionAvail().x))
        w.toggle_middle(w.meter.open);
    hint(in.theme, "Type in what a meter reads on the screen, and see what lamp it comes from");
}

/// What floats beside the figures of sight.
void draw_sight_tools(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    const float width = (ImGui::GetContentRegionAvail().x - t.px(8)) / 2.0f;
    if (word_button(t, "Solve the floor", width)) w.toggle_middle(w.rake.open);
    hint(t, "The floor that gives every row of a block the wanted C",
         "The long section shows it as a line before it is built.");
    ImGui::SameLine(0.0f, t.px(8));
    if (word_button(t, "Picture width", width)) w.toggle_middle(w.widths_open);
    hint(t, "How wide this format may be for its viewing angles to hold");
}

/// Loudspeakers of the series read: the one chosen replaces what is looked at.
void draw_series_choice(const PanelInput& in, Workspace& w, Requests& out, float width) {
    const Theme& t = in.theme;
    const auto listed = listed_loudspeakers(w);
    if (listed.empty()) {
        if (word_button(t, "Open a series…", width)) out.actions.push_back(Action::open_series);
        hint(t, "Loudspeakers of a series file, to put in the place of this one");
        return;
    }
    std::vector<std::string> names{"Take from a series…"};
    for (const ListedLoudspeaker& one : listed)
        names.push_back(one.loudspeaker->name);
    const int chosen = dropdown(t, "##series", names, 0, width);
    hint(t, "Puts one of the series in the place of this one; place, aim and delay stay");
    const auto count = static_cast<int>(in.brief.layout.loudspeakers.size());
    if (chosen < 1 || w.loudspeaker >= count) return;
    const room::Loudspeaker& one = *listed[static_cast<std::size_t>(chosen - 1)].loudspeaker;
    out.edit =
        Edit{"Take " + one.name, with_series_loudspeaker(in.brief.layout, w.loudspeaker, one), {}};
}

/// What can be put into the layout beside the figures of sound, and what hangs over people there.
void draw_sound_tools(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    const float width = (ImGui::GetContentRegionAvail().x - t.px(8)) / 2.0f;
    if (word_button(t, "Set delays", width))
        if (auto edit = delay_edit(in)) out.edit = std::move(edit);
    hint(t, delay_words(in));
    ImGui::SameLine(0.0f, t.px(8));
    if (word_button(t, "Aim at the seats", width))
        if (auto edit = aim_edit(in, w)) out.edit = std::move(edit);
    if (ImGui::IsItemHovered()) hint(t, aim_hint(in, w));
    draw_series_choice(in, w, out, width);
    ImGui::SameLine(0.0f, t.px(8));
    if (word_button(t, "Screen sheets", width)) w.toggle_middle(w.sheets_open);
    hint(t, "Other holes: what sound and light lose, and what is seen of them");
}

/// Beside the figures of lamp, supply and exhaust.
void draw_light_cautions(const PanelInput& in, Workspace& w) {
    for (const char* title : {"Xenon lamps", "Electrical supply", "Heat, exhaust and ozone",
                              "Bright beams and ultraviolet light"})
        caution_line(in, w, title);
}

/// Beside the figures of levels and cabinets.
void draw_sound_cautions(const PanelInput& in, Workspace& w) {
    for (const char* title : {"Rigging", "Loud sound"})
        caution_line(in, w, title);
}

void splitter(const PanelInput& in, Workspace& w, float whole) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    ImGui::InvisibleButton("##split", {std::max(width, 1.0f), t.px(9)});
    const bool hot = ImGui::IsItemHovered() || ImGui::IsItemActive();
    if (hot) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeNS);
    if (ImGui::IsItemActive())
        w.figures_share =
            std::clamp(w.figures_share + ImGui::GetIO().MouseDelta.y / whole, 0.2f, 0.8f);
    ImGui::GetWindowDrawList()->AddLine({at.x, at.y + t.px(4)}, {at.x + width, at.y + t.px(4)},
                                        packed(hot ? t.colour.lamp : t.colour.line),
                                        hot ? 2.0f * t.scale : 1.0f);
}

}  // namespace

void draw_figures(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    if (!in.study) {
        text_wrapped(t.font.body, t.colour.quiet,
                     in.problems.empty() ? "Studying the room…"
                                         : "No figures yet: the layout can't be studied. "
                                           "The findings column says why.");
        return;
    }
    if (w.subject == study::Subject::sound) {
        draw_sound_choice(in, w);
        draw_sound_tools(in, w, out);
    }
    if (w.subject == study::Subject::picture) draw_picture_tools(in, w);
    if (w.subject == study::Subject::light) draw_light_tools(in, w);
    if (w.subject == study::Subject::sight) draw_sight_tools(in, w);
    const auto groups = figure_groups(*in.study, w);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {t.px(8), t.px(2)});
    for (const FigureGroup& group : groups) {
        group_heading(t, group.title);
        for (const study::Figure* figure : group.figures)
            draw_figure(in, w, *figure);
        for (const study::FigureDefinition* awaited : group.awaited)
            awaited_row(t, *awaited, awaited_words(in));
        ImGui::Dummy({0.0f, t.px(6)});
    }
    ImGui::PopStyleVar();
    if (w.subject == study::Subject::light) draw_light_cautions(in, w);
    if (w.subject == study::Subject::sound) draw_sound_cautions(in, w);
    if (groups.empty())
        text_wrapped(t.font.body, t.colour.quiet,
                     "No figures here: this projector gives no picture in this format. The "
                     "findings say why.");
}

void draw_editor(const PanelInput& in, Workspace& w, Requests& out) {
    room::Layout layout = in.brief.layout;
    FieldEditor editor(in, w);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {in.theme.px(8), in.theme.px(4)});
    room::describe(editor, layout);
    ImGui::PopStyleVar();
    out.end_gesture = out.end_gesture || editor.finished();
    if (editor.change()) {
        follow_renames(in.brief.layout, layout);
        out.edit = Edit{editor.change()->label, std::move(layout), editor.change()->gesture};
    }
    w.reveal.clear();
}

void draw_subject_panel(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    text_line(t.font.title, t.colour.text, study::subject_title(w.subject));
    const float below_title = ImGui::GetCursorPosY();
    if (*following_word(in)) {
        ImGui::SameLine(0.0f, t.px(12));
        ImGui::SetCursorPosY(ImGui::GetCursorPosY() + t.px(7));
        text_line(t.font.small, in.problems.empty() ? t.colour.lamp : t.colour.missed,
                  following_word(in));
        // The word comes and goes while a handle is dragged; what stands below must not jump.
        ImGui::SetCursorPosY(below_title);
    }
    const float whole = ImGui::GetContentRegionAvail().y;
    const ImGuiWindowFlags flags = ImGuiWindowFlags_NoBackground;
    const std::string id = study::subject_name(w.subject) + std::to_string(w.document);
    ImGui::BeginChild(("figures" + id).c_str(), {0.0f, whole * w.figures_share}, false, flags);
    draw_figures(of_study(in), w, out);
    ImGui::EndChild();
    splitter(in, w, whole);
    ImGui::BeginChild(("editor" + id).c_str(), {0.0f, 0.0f}, false, flags);
    draw_editor(in, w, out);
    ImGui::EndChild();
}

}  // namespace rakeline::desk
