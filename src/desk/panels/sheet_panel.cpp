// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "desk/panels/panels.hpp"
#include "desk/sheet_choice.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/text.hpp"
#include "drawing/perforation_plot.hpp"
#include "study/perforation_words.hpp"

#include <algorithm>
#include <array>

namespace rakeline::desk {
namespace {

using base::Unit;
using study::SheetTrial;

constexpr float kRowHeight = 23.0f;

struct SheetColumn {
    const char* head;
    const char* meaning;
    std::string (*text)(const SheetTrial&, base::UnitSystem);
};

std::string ratio_text(const std::optional<double>& value) {
    return value ? base::fixed_text(*value, 2) : "–";
}

constexpr std::array<SheetColumn, 5> kColumns{{
    {"10 kHz", "What the sheet takes of the sound at 10 kHz, straight through",
     [](const SheetTrial& t, base::UnitSystem units) {
         return base::quantity_text(t.loss_10k_db, Unit::decibel, units);
     }},
    {"light lost", "Share of the light that falls into the holes",
     [](const SheetTrial& t, base::UnitSystem units) {
         return base::quantity_text(t.open_area, Unit::fraction, units);
     }},
    {"hole, min", "A hole from the nearest seat, in minutes of arc: seen above 1",
     [](const SheetTrial& t, base::UnitSystem) { return ratio_text(t.hole_minutes); }},
    {"seats", "Share of the seats to which a hole is more than a minute of arc",
     [](const SheetTrial& t, base::UnitSystem units) {
         return t.hole_seats ? base::quantity_text(*t.hole_seats, Unit::fraction, units)
                             : std::string("–");
     }},
    {"beat",
     "Contrast of the bands that pixels make with the holes, over the eye's threshold: seen above "
     "1",
     [](const SheetTrial& t, base::UnitSystem) { return ratio_text(t.beat); }},
}};

struct RowPlan {
    float number = 0.0f, name = 0.0f, name_width = 0.0f, numbers = 0.0f, step = 0.0f, button = 0.0f;
};

RowPlan plan_rows(const Theme& t, float width) {
    RowPlan p;
    p.number = t.px(34);
    p.name = t.px(44);
    p.button = width - t.px(72);
    p.step = t.px(72);
    p.numbers = p.button - t.px(10) - p.step * static_cast<float>(kColumns.size());
    p.name_width = p.numbers - p.name;
    return p;
}

const ImVec4& sight_colour(const Theme& t, const SheetTrial& trial) {
    switch (study::sight_of(trial)) {
        case study::SheetSight::beat_seen:
            return t.colour.missed;
        case study::SheetSight::holes_seen:
            return t.colour.lamp;
        case study::SheetSight::unseen:
            break;
    }
    return t.colour.holds;
}

void draw_heads(const PanelInput& in, const RowPlan& p) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    paint_text(list, t.font.small, {at.x + p.name, at.y}, t.colour.quiet, "sheet");
    for (std::size_t i = 0; i < kColumns.size(); ++i) {
        const float right = at.x + p.numbers + p.step * static_cast<float>(i + 1);
        paint_text_right(list, t.font.small, {right, at.y}, t.colour.quiet, kColumns[i].head);
        ImGui::SetCursorScreenPos({right - p.step, at.y});
        ImGui::PushID(static_cast<int>(i));
        ImGui::InvisibleButton("##head", {p.step, t.px(16)});
        hint(t, kColumns[i].meaning);
        ImGui::PopID();
    }
    ImGui::SetCursorScreenPos({at.x, at.y + t.px(18)});
    hairline(t);
}

/// One sheet: number, name, numbers. Returns whether Hang was pressed.
bool draw_row(const PanelInput& in, const RowPlan& p, const SheetTrial& trial, std::size_t i) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float height = t.px(kRowHeight);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (i == 0)
        list.AddRectFilled(at, {at.x + p.button + t.px(72), at.y + height}, packed(t.colour.raised),
                           t.px(6));
    const float y = at.y + t.px(4);
    const std::string number = i == 0 ? "now" : std::to_string(i);
    paint_text_right(list, t.font.small, {at.x + p.number, y}, sight_colour(t, trial), number);
    const std::string name =
        i == 0 ? study::sheet_words(trial.sheet.perforation, in.units()) : trial.sheet.name;
    paint_text(list, t.font.small, {at.x + p.name, y}, t.colour.text,
               fitted(t.font.small, name, p.name_width));
    for (std::size_t c = 0; c < kColumns.size(); ++c)
        paint_text_right(list, t.font.small_figures,
                         {at.x + p.numbers + p.step * static_cast<float>(c + 1), y}, t.colour.text,
                         kColumns[c].text(trial, in.units()));
    ImGui::InvisibleButton("##name", {p.numbers, height});
    hint(t, name, study::sheet_sight_words(study::sight_of(trial)));
    ImGui::SetCursorScreenPos({at.x + p.button, at.y});
    const bool pressed = i > 0 && segmented(t, "hang", {"Hang"}, -1) == 0;
    ImGui::SetCursorScreenPos({at.x, at.y + height + t.px(1)});
    ImGui::Dummy({1.0f, 0.0f});
    return pressed;
}

void draw_rows(const PanelInput& in,
               const Workspace& w,
               const study::SheetTrials& trials,
               Requests& out) {
    const RowPlan rows = plan_rows(in.theme, ImGui::GetContentRegionAvail().x - in.theme.px(14));
    draw_heads(in, rows);
    const float wanted =
        in.theme.px(kRowHeight + 5.0f) * static_cast<float>(trials.trials.size()) + in.theme.px(4);
    const float most = ImGui::GetIO().DisplaySize.y * 0.40f;
    ImGui::BeginChild("sheets", {0.0f, std::min(wanted, most)}, false,
                      ImGuiWindowFlags_NoBackground);
    for (std::size_t i = 0; i < trials.trials.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        if (draw_row(in, rows, trials.trials[i], i)) out.edit = hang_sheet(in, w, i);
        ImGui::PopID();
    }
    ImGui::EndChild();
}

/// The sheets in a plot, drawn anew only when trials or size have changed.
void draw_plot(const PanelInput& in, Workspace& w, const study::SheetTrials& trials) {
    const Theme& t = in.theme;
    const ImVec2 low = ImGui::GetCursorScreenPos();
    const float left = ImGui::GetIO().DisplaySize.y - low.y - t.px(90);
    const ImVec2 size{ImGui::GetContentRegionAvail().x, std::clamp(left, t.px(150), t.px(330))};
    const ImVec2 high{low.x + size.x, low.y + size.y};
    SheetPlotCache& cache = w.sheet_plot;
    const auto shape = drawing::perforation_plot_shape(
        {static_cast<double>(size.x), static_cast<double>(size.y)},
        static_cast<double>(label_pitch(t)), drawing::SheetNames::none);
    const SheetPlotCache::Key key{in.sheets.serial, shape};
    if (!(cache.key == key) || !cache.plot) {
        cache.plot = std::make_shared<const drawing::Drawing>(
            drawing::perforation_plot(trials, shape, drawing::SheetNames::none));
        cache.key = key;
    }
    ImGui::Dummy(size);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRect(low, high, true);
    paint_drawing(t, list, *cache.plot, fitted_view(*cache.plot, low, high, {}),
                  {.hovered = {}, .selected = {}, .units = in.units()});
    list.PopClipRect();
}

void draw_turn(const PanelInput& in,
               const Workspace& w,
               const study::SheetTrials& trials,
               Requests& out) {
    const Theme& t = in.theme;
    const std::string words = study::turn_words(trials, in.units());
    const auto edit = turn_holes(in, w);
    if (!edit) return text_wrapped(t.font.small, t.colour.quiet, words);
    if (word_button(t, "Turn the holes", t.px(130))) out.edit = edit;
    hint(t, "Orders the same sheet with its rows of holes turned");
    ImGui::SameLine(0.0f, t.px(10));
    ImGui::BeginGroup();
    text_wrapped(t.font.small, t.colour.quiet, words);
    ImGui::EndGroup();
}

void draw_body(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    text_wrapped(t.font.small, t.colour.text,
                 study::beat_words(*in.study, w.projector, w.format, in.units()));
    if (!in.sheets.answer)
        return text_wrapped(t.font.body, t.colour.quiet, "Setting sheets against each other…");
    const bool current = sheets_current(in, w);
    const PanelInput shown = current ? in : behind(in);
    const study::SheetTrials& trials = in.sheets.answer->trials;
    draw_turn(shown, w, trials, out);
    draw_rows(shown, w, trials, out);
    if (w.sheets.empty()) {
        text_wrapped(t.font.small, t.colour.quiet,
                     "A series file with sheets gives others to set against it.");
    }
    if (word_button(t, "Open a series…", t.px(150))) out.actions.push_back(Action::open_series);
    hint(t, "Sheets of a series file are set against the one that hangs");
    draw_plot(shown, w, trials);
    text_wrapped(t.font.small, t.colour.lamp, "△ " + study::sheet_scope(*in.study).back());
}

}  // namespace

void draw_sheets(const PanelInput& in, Workspace& w, Requests& out) {
    const room::Layout* layout = in.study ? &in.study->layout() : nullptr;
    if (!w.sheets_open || !layout || layout->projectors.empty() || layout->formats.empty()) return;
    out.sheets = true;
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, t.px(56)}, ImGuiCond_Appearing, {0.5f, 0.0f});
    const float width = std::min(t.px(900), display.x - t.px(32));
    if (!begin_floating(t, "##sheets", "Screen sheets", width)) w.sheets_open = false;
    draw_body(in, w, out);
    ImGui::End();
}

}  // namespace rakeline::desk
