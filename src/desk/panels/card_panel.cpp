// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/caution_line.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/figure_row.hpp"
#include "desk/widgets/seat_picture.hpp"
#include "desk/widgets/text.hpp"
#include "report/report.hpp"

#include <algorithm>
#include <cmath>
#include <string_view>

namespace rakeline::desk {
namespace {

using Kind = drawing::Shows::Kind;

void draw_value(const PanelInput& in, Workspace& w, const study::Figure& figure, int index) {
    for (std::size_t i = 0; i < figure.values.size(); ++i) {
        if (figure.values[i].index != index) continue;
        const FigureRowWords words{figure.definition->label, {}};
        if (figure_row(in.theme, *in.study, figure, figure.values[i].si, figure.verdicts.at(i),
                       in.units(), words))
            w.pinned = PinnedFigure{
                figure.definition->id,
                {figure.projector, figure.format, figure.loudspeaker, {}, {}, figure.band},
                index};
    }
}

bool chosen(const std::optional<int>& of, int choice) {
    return !of || *of == choice;
}

/// All figures along `axis` at the chosen place: the open subject's first, then the others.
void draw_values_along(const PanelInput& in, Workspace& w, study::Axis axis, int index) {
    for (const bool of_subject : {true, false})
        for (const study::Figure& figure : in.study->figures) {
            if (figure.definition->axis() != axis ||
                (figure.definition->subject == w.subject) != of_subject)
                continue;
            if (chosen(figure.projector, w.projector) && chosen(figure.format, w.format) &&
                chosen(figure.loudspeaker, w.loudspeaker) && chosen(figure.band, w.band))
                draw_value(in, w, figure, index);
        }
}

/// The picture as the seat sees it, in the proportions of 16 to 9, unless it is shown large.
void draw_seat_picture(const PanelInput& in, Workspace& w) {
    if (sees_from_seat(in, w)) return;
    const float width = ImGui::GetContentRegionAvail().x;
    seat_picture(in, w, {width, std::round(width * 9.0f / 16.0f)}, in.theme.px(8));
}

void draw_seat(const PanelInput& in, Workspace& w) {
    draw_seat_picture(in, w);
    draw_values_along(in, w, study::Axis::seat, w.selected.index);
    const auto* chance = study::find_definition("sight.clear_chance");
    if (!in.study->crowd && chance) awaited_row(in.theme, *chance, awaited_words(in));
}

void draw_projector(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    const auto& projector =
        in.study->layout().projectors.at(static_cast<std::size_t>(w.selected.index));
    const bool film = projector.kind == room::SourceKind::film;
    const bool xenon = projector.flux.lamp == room::LampKind::xenon;
    text_line(t.font.small, t.colour.quiet,
              std::string(film ? "film" : "digital") + " · " + (xenon ? "xenon lamp" : "laser"));
    for (const study::Figure& figure : in.study->figures)
        if (figure.projector == w.selected.index && chosen(figure.format, w.format) &&
            figure.definition->axis() == study::Axis::none)
            draw_value(in, w, figure, 0);
    ImGui::Dummy({0.0f, t.px(4)});
    if (xenon) caution_line(in, w, "Xenon lamps");
    caution_line(in, w, "Electrical supply");
    caution_line(in, w, "Heat, exhaust and ozone");
    caution_line(in, w, "Bright beams and ultraviolet light");
}

void draw_loudspeaker(const PanelInput& in, Workspace& w) {
    for (const study::Figure& figure : in.study->figures)
        if (figure.loudspeaker == w.selected.index && chosen(figure.band, w.band) &&
            figure.definition->axis() == study::Axis::none)
            draw_value(in, w, figure, 0);
    for (const study::Figure& figure : in.study->figures) {
        if (figure.loudspeaker != w.selected.index || !chosen(figure.band, w.band) ||
            figure.definition->axis() == study::Axis::none)
            continue;
        const auto e = extent(*in.study, figure);
        if (!e) continue;
        const FigureRowWords words{
            figure.definition->label,
            "at " + study::index_name(*in.study, *figure.definition, e->worst.index)};
        figure_row(in.theme, *in.study, figure, e->worst.si, e->worst.verdict, in.units(), words);
    }
    caution_line(in, w, "Rigging");
}

void draw_screen(const PanelInput& in, Workspace& w) {
    for (const study::Figure& figure : in.study->figures)
        if (!figure.projector && figure.format == w.format &&
            figure.definition->axis() == study::Axis::none)
            draw_value(in, w, figure, 0);
    caution_line(in, w, "Rigging");
}

void draw_row(const PanelInput& in, Workspace& w) {
    draw_values_along(in, w, study::Axis::row, w.selected.index);
    caution_line(in, w, "Steps, aisles and exits");
    caution_line(in, w, "Access");
}

void draw_nothing(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    text_wrapped(t.font.small, t.colour.quiet,
                 "Click a seat, a row, a projector or a loudspeaker, in the view or in the "
                 "drawing, and it is described here. A seat shows the picture as it sees it.");
    ImGui::Dummy({0.0f, t.px(4)});
    caution_line(in, w, "Steps, aisles and exits");
    caution_line(in, w, "This study");
}

}  // namespace

void draw_card_panel(const PanelInput& in, Workspace& w, Requests&) {
    const Theme& t = in.theme;
    const std::string name = in.study ? name_of(*in.study, w.selected) : std::string{};
    const float top = ImGui::GetCursorScreenPos().y;
    const float right = ImGui::GetCursorScreenPos().x + ImGui::GetContentRegionAvail().x;
    text_line(t.font.title, name.empty() ? t.colour.quiet : t.colour.text,
              name.empty() ? "Nothing selected"
                           : fitted(t.font.title, name, ImGui::GetContentRegionAvail().x));
    if (!in.study) return;
    if (*following_word(in))
        paint_text_right(*ImGui::GetWindowDrawList(), t.font.small, {right, top + t.px(8)},
                         t.colour.quiet, following_word(in));
    ImGui::BeginChild("card", {0, 0}, false, ImGuiWindowFlags_NoBackground);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {t.px(8), t.px(2)});
    switch (w.selected.kind) {
        case Kind::seat:
            draw_seat(in, w);
            break;
        case Kind::row:
            draw_row(in, w);
            break;
        case Kind::projector:
            draw_projector(in, w);
            break;
        case Kind::loudspeaker:
            draw_loudspeaker(in, w);
            break;
        case Kind::screen:
            draw_screen(in, w);
            break;
        case Kind::hall:
        case Kind::nothing:
            draw_nothing(in, w);
            break;
    }
    ImGui::PopStyleVar();
    ImGui::EndChild();
}

}  // namespace rakeline::desk
