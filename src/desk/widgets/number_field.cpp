// SPDX-License-Identifier: MIT
#include "desk/widgets/number_field.hpp"

#include "base/number_text.hpp"
#include "desk/widgets/text.hpp"

#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

constexpr float kHeight = 28.0f;

/// The whole of what is needed to draw one field, so that its parts need no long lists.
struct Field {
    const Theme& theme;
    const NumberSpec& spec;
    base::UnitSystem units;
    float width;
    NumberEdit& edit;
};

std::string typed_form(const Field& f, double value_si) {
    return base::quantity_text(value_si, f.spec.unit, f.units);
}

void open_typing(const Field& f, unsigned id, double value_si) {
    f.edit.widget = id;
    f.edit.text = typed_form(f, value_si);
    f.edit.error.clear();
    f.edit.take_focus = true;
    f.edit.take_next = false;
}

std::string range_text(const Field& f) {
    return typed_form(f, f.spec.least) + " to " + typed_form(f, f.spec.most);
}

/// Reads the typed text; keeps the field open with the reason where it can't be used.
bool take_typed(const Field& f, double& value_si) {
    const auto read = base::parse_quantity(f.edit.text, f.spec.unit, f.units);
    if (!read) {
        f.edit.error = read.problems().front().what;
        const std::string& mend = read.problems().front().mend;
        if (!mend.empty()) f.edit.error += "; " + mend;
        return false;
    }
    const double value = f.spec.whole ? std::round(*read) : *read;
    const double slack = 1e-9 * std::max(1.0, std::abs(f.spec.most));
    if (value < f.spec.least - slack || value > f.spec.most + slack) {
        f.edit.error = typed_form(f, value) + " is outside " + range_text(f);
        return false;
    }
    value_si = std::clamp(value, f.spec.least, f.spec.most);
    return true;
}

void show_error(const Field& f, ImVec2 below) {
    ImGui::SetNextWindowPos(below);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {f.theme.px(10), f.theme.px(8)});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(f.theme.px(280));
    text_line(f.theme.font.small, f.theme.colour.missed, f.edit.error);
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
}

NumberOutcome typing(const Field& f, double& value_si) {
    NumberOutcome outcome;
    ImGui::SetNextItemWidth(f.width);
    if (f.edit.take_focus) ImGui::SetKeyboardFocusHere();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const std::string shown = typed_form(f, value_si);
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, 1.0f);
    ImGui::PushStyleColor(ImGuiCol_Border, f.theme.colour.lamp);
    const bool entered =
        ImGui::InputText("##typed", &f.edit.text,
                         ImGuiInputTextFlags_EnterReturnsTrue | ImGuiInputTextFlags_AutoSelectAll);
    ImGui::PopStyleColor();
    ImGui::PopStyleVar();
    const bool tabbed = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Tab), false);
    const bool gave_up = ImGui::IsKeyPressed(ImGui::GetKeyIndex(ImGuiKey_Escape), false);
    const bool left = ImGui::IsItemDeactivated();
    if (!f.edit.error.empty()) show_error(f, {at.x, at.y + f.theme.px(kHeight + 4)});
    if (f.edit.take_focus) {
        f.edit.take_focus = false;
        return outcome;
    }
    if (!entered && !left && !tabbed) return outcome;
    const double before = value_si;
    // Text left as it was printed stands for the unrounded value, so that it changes nothing.
    const bool same = f.edit.text == shown;
    if (gave_up || same || take_typed(f, value_si)) {
        f.edit.widget = 0;
        f.edit.take_next = tabbed && !gave_up;
        outcome.changed = value_si != before;
        outcome.finished = true;
    } else if (entered) {
        f.edit.take_focus = true;
    } else {
        f.edit.widget = 0;  // left with the mouse while unreadable: the old value stays
    }
    return outcome;
}

void paint_value(const Field& f, ImVec2 at, double value_si, bool hot) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + f.width, at.y + f.theme.px(kHeight)};
    list.AddRectFilled(at, end, packed(hot ? f.theme.colour.line : f.theme.colour.raised),
                       f.theme.px(6));
    const base::QuantityText text = base::quantity(value_si, f.spec.unit, f.units);
    const float unit_room = f.theme.px(38);  // kept without a unit too: one column of numbers
    const float right = end.x - f.theme.px(8) - unit_room;
    paint_text_right(list, f.theme.font.figures, {right, at.y + f.theme.px(5)}, f.theme.colour.text,
                     text.number);
    if (!text.unit.empty())
        paint_text(list, f.theme.font.small, {right + f.theme.px(6), at.y + f.theme.px(7)},
                   f.theme.colour.quiet, text.unit);
}

NumberOutcome dragging(const Field& f, unsigned id, double& value_si) {
    NumberOutcome outcome;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::InvisibleButton("##drag", {f.width, f.theme.px(kHeight)});
    if (ImGui::IsItemHovered()) ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
    if (ImGui::IsItemActivated()) {
        f.edit.drag_start = value_si;
        f.edit.dragged = false;
    }
    const bool moving = ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left);
    if (moving) {
        const ImGuiIO& io = ImGui::GetIO();
        const double pace = io.KeyShift ? 10.0 : io.KeyAlt ? 0.1 : 1.0;
        const auto pixels =
            static_cast<double>(ImGui::GetMouseDragDelta().x / f.theme.scale) * pace;
        const double value = dragged_value(f.spec, f.units, f.edit.drag_start, pixels);
        outcome.changed = value != value_si;
        value_si = value;
        f.edit.dragged = true;
    }
    if (ImGui::IsItemDeactivated()) {
        if (f.edit.dragged)
            outcome.finished = true;
        else if (ImGui::IsItemHovered())
            open_typing(f, id, value_si);
    }
    paint_value(f, at, value_si, ImGui::IsItemHovered() || ImGui::IsItemActive());
    return outcome;
}

}  // namespace

double drag_step(const NumberSpec& spec, base::UnitSystem units) {
    if (spec.whole) return 0.1;
    const base::ShownScale scale = base::shown_scale(spec.unit, units);
    const double range = (spec.most - spec.least) * std::abs(scale.factor);
    const double finest = std::pow(10.0, -scale.decimals);
    return std::max(finest, std::pow(10.0, std::floor(std::log10(range * 0.0004))));
}

double dragged_value(const NumberSpec& spec,
                     base::UnitSystem units,
                     double value_si,
                     double pixels) {
    const base::ShownScale scale = base::shown_scale(spec.unit, units);
    const double step = spec.whole ? 1.0 : std::min(drag_step(spec, units), 1e9);
    const double shown = value_si * scale.factor + scale.offset + pixels * drag_step(spec, units);
    const double rounded = std::round(shown / step) * step;
    const double si = (rounded - scale.offset) / scale.factor;
    return std::clamp(spec.whole ? std::round(si) : si, spec.least, spec.most);
}

NumberOutcome number_field(const Theme& theme,
                           const char* id,
                           const NumberSpec& spec,
                           base::UnitSystem units,
                           float width,
                           NumberEdit& edit,
                           double& value_si) {
    ImGui::PushID(id);
    const unsigned widget = ImGui::GetID("number");
    const Field field{theme, spec, units, width, edit};
    if (edit.take_next && edit.widget == 0) open_typing(field, widget, value_si);
    const NumberOutcome outcome =
        edit.widget == widget ? typing(field, value_si) : dragging(field, widget, value_si);
    ImGui::PopID();
    return outcome;
}

}  // namespace rakeline::desk
