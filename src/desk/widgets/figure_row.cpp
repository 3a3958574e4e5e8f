// SPDX-License-Identifier: MIT
#include "desk/widgets/figure_row.hpp"

#include "desk/figure_view.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

constexpr float kRow = 32.0f;
constexpr float kNotedRow = 46.0f;
constexpr float kMarkRoom = 22.0f;

/// The right-hand side of a row, from the right: mark, unit, number. Returns where the
/// number begins.
float paint_right_side(const Theme& theme,
                       ImVec2 right,
                       const base::QuantityText& text,
                       study::Verdict verdict) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec4& colour = verdict_colour(theme.colour, verdict);
    const std::string mark = study::verdict_mark(verdict);
    paint_text_right(list, theme.font.small, {right.x - theme.px(2), right.y + theme.px(2)}, colour,
                     mark);
    const float unit_room = std::max(theme.px(36), text_width(theme.font.small, text.unit));
    const float unit_left = right.x - theme.px(kMarkRoom) - unit_room;
    paint_text(list, theme.font.small, {unit_left, right.y + theme.px(2)}, theme.colour.quiet,
               text.unit);
    const ImVec4& ink = verdict == study::Verdict::missed ? theme.colour.missed : theme.colour.text;
    const float number_right = unit_left - theme.px(6);
    paint_text_right(list, theme.font.figures, {number_right, right.y}, ink, text.number);
    return number_right - text_width(theme.font.figures, text.number);
}

}  // namespace

bool figure_row(const Theme& theme,
                const study::Study& study,
                const study::Figure& figure,
                double si,
                study::Verdict verdict,
                base::UnitSystem units,
                const FigureRowWords& words) {
    const float width = ImGui::GetContentRegionAvail().x;
    const float height = theme.px(words.note.empty() ? kRow : kNotedRow);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::PushID(&figure);
    const bool clicked = ImGui::InvisibleButton("row", {std::max(width, 1.0f), height});
    ImGui::PopID();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (ImGui::IsItemHovered()) {
        list.AddRectFilled({at.x - theme.px(6), at.y}, {at.x + width + theme.px(6), at.y + height},
                           packed(theme.colour.raised), theme.px(6));
        figure_tooltip(theme, study, figure, verdict, units);
    }
    const float top = at.y + theme.px(6);
    const auto text = base::quantity(si, figure.definition->unit, units);
    const float number_left = paint_right_side(theme, {at.x + width, top}, text, verdict);
    const float label_room = number_left - at.x - theme.px(8);
    paint_text(list, theme.font.body, {at.x, top}, theme.colour.quiet,
               fitted(theme.font.body, words.label, label_room));
    if (!words.note.empty())
        paint_text(list, theme.font.small, {at.x, top + theme.px(20)}, theme.colour.quiet,
                   fitted(theme.font.small, words.note, width));
    list.AddLine({at.x, at.y + height}, {at.x + width, at.y + height},
                 packed(theme.colour.line, 0.6f));
    return clicked;
}

void awaited_row(const Theme& theme, const study::FigureDefinition& definition, const char* words) {
    const float width = ImGui::GetContentRegionAvail().x;
    const float height = theme.px(definition.axis() == study::Axis::none ? kRow : kNotedRow);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::Dummy({std::max(width, 1.0f), height});
    hint(theme, definition.label, definition.meaning);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float top = at.y + theme.px(6);
    const float words_width = text_width(theme.font.small, words);
    paint_text(list, theme.font.body, {at.x, top}, theme.colour.quiet,
               fitted(theme.font.body, definition.label, width - words_width - theme.px(30)));
    paint_text_right(list, theme.font.small,
                     {at.x + width - theme.px(kMarkRoom), top + theme.px(2)}, theme.colour.quiet,
                     words);
    list.AddLine({at.x, at.y + height}, {at.x + width, at.y + height},
                 packed(theme.colour.line, 0.6f));
}

void figure_tooltip(const Theme& theme,
                    const study::Study& study,
                    const study::Figure& figure,
                    study::Verdict verdict,
                    base::UnitSystem units) {
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {theme.px(14), theme.px(12)});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(theme.px(360));
    const study::FigureDefinition& definition = *figure.definition;
    text_line(theme.font.body, theme.colour.text, definition.label);
    text_line(theme.font.small, theme.colour.text, definition.meaning);
    for (const int index : figure.limits) {
        const auto& limit = study.brief->limits.limits.at(static_cast<std::size_t>(index));
        text_line(theme.font.small, verdict_colour(theme.colour, verdict),
                  limit_text(limit, definition.unit, units));
    }
    text_line(theme.font.small, theme.colour.quiet, study::verdict_word(verdict));
    text_line(theme.font.small, theme.colour.quiet, std::string("source: ") + definition.source);
    text_line(theme.font.small, theme.colour.lamp, "click to see how it is worked out");
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
}

}  // namespace rakeline::desk
