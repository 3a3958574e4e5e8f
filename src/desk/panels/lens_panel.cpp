// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "desk/lens_choice.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>
#include <array>
#include <cfloat>

namespace rakeline::desk {
namespace {

using base::Unit;
using picture::LensChoice;

/// A column of numbers: its head and meaning, and what one lens shows in it.
struct LensColumn {
    const char* head;
    Unit unit;
    const char* meaning;
    std::optional<double> (*value)(const LensChoice&);
};

std::optional<double> least_over(const LensChoice& c) {
    if (!c.picture || !c.picture->overfill) return std::nullopt;
    return c.picture->overfill->least_m();
}

constexpr std::array<LensColumn, 9> kColumns{{
    {"set to", Unit::millimetre, "Focal length: a prime's own, or the setting of the zoom",
     [](const LensChoice& c) { return std::optional(c.focal_length_m); }},
    {"width", Unit::metre, "Picture width on the screen, along the axis",
     [](const LensChoice& c) { return c.picture_width_m; }},
    {"least over", Unit::millimetre,
     "Light past the opening's edge where it is least; below zero it falls short", least_over},
    {"of width", Unit::fraction, "The same as a share of the picture's width",
     [](const LensChoice& c) -> std::optional<double> {
         const auto over = least_over(c);
         if (!over || !c.picture_width_m) return std::nullopt;
         return *over / *c.picture_width_m;
     }},
    {"light lost", Unit::fraction,
     "Share of the picture that falls on the masking: with an evenly lit gate, of the light",
     [](const LensChoice& c) { return c.picture ? std::optional(c.picture->crop) : std::nullopt; }},
    {"dark", Unit::fraction, "Share of the opening that gets no light",
     [](const LensChoice& c) {
         return c.picture ? std::optional(c.picture->uncovered) : std::nullopt;
     }},
    {"shift lost", Unit::fraction,
     "Share of the gate pushed off the opening because the lens shifts less than is wanted",
     [](const LensChoice& c) { return std::optional(c.reach.field_lost); }},
    {"circle spare", Unit::millimetre, "Its image circle less the one that the gate wants",
     [](const LensChoice& c) { return std::optional(c.reach.image_circle_spare_m); }},
    {"port spare", Unit::millimetre,
     "From the light to the rim of the port, where it is least; below zero the wall cuts into it",
     [](const LensChoice& c) { return c.picture ? c.picture->port_margin_m : std::nullopt; }},
}};

/// Where everything of a row stands, pixels from its left.
struct RowPlan {
    float mark = 0.0f, name = 0.0f, name_width = 0.0f, numbers = 0.0f, step = 0.0f, button = 0.0f;
};

RowPlan plan_rows(const Theme& t, float width) {
    RowPlan p;
    p.mark = t.px(8);
    p.name = t.px(32);
    p.button = width - t.px(72);
    p.step = t.px(76);
    p.numbers = p.button - t.px(10) - p.step * static_cast<float>(kColumns.size());
    p.name_width = p.numbers - p.name;
    return p;
}

void draw_heads(const PanelInput& in, const RowPlan& p) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    paint_text(list, t.font.small, {at.x + p.name, at.y + t.px(14)}, t.colour.quiet, "lens");
    for (std::size_t i = 0; i < kColumns.size(); ++i) {
        const float right = at.x + p.numbers + p.step * static_cast<float>(i + 1);
        const std::string unit = base::quantity(0.0, kColumns[i].unit, in.units()).unit;
        paint_text_right(list, t.font.small, {right, at.y}, t.colour.quiet, kColumns[i].head);
        paint_text_right(list, t.font.small, {right, at.y + t.px(14)}, t.colour.quiet, unit);
        ImGui::SetCursorScreenPos({right - p.step, at.y});
        ImGui::PushID(static_cast<int>(i));
        ImGui::InvisibleButton("##head", {p.step, t.px(30)});
        hint(t, kColumns[i].meaning);
        ImGui::PopID();
    }
    ImGui::SetCursorScreenPos({at.x, at.y + t.px(32)});
    hairline(t);
}

bool is_good(const LensChoice& c) {
    return c.covers() && c.fits();
}

void paint_numbers(const PanelInput& in, const RowPlan& p, const LensChoice& c, ImVec2 at) {
    const Theme& t = in.theme;
    for (std::size_t i = 0; i < kColumns.size(); ++i) {
        const auto value = kColumns[i].value(c);
        const std::string text =
            value ? base::quantity(*value, kColumns[i].unit, in.units()).number : "–";
        const bool short_of = value && *value < 0.0;
        paint_text_right(*ImGui::GetWindowDrawList(), t.font.small_figures,
                         {at.x + p.numbers + p.step * static_cast<float>(i + 1), at.y},
                         short_of ? t.colour.missed : t.colour.text, text);
    }
}

float faults_height(const Theme& t, const std::string& faults, float width) {
    if (faults.empty()) return 0.0f;
    const float size = t.font.small->FontSize * ImGui::GetIO().FontGlobalScale;
    return t.font.small->CalcTextSizeA(size, FLT_MAX, width, faults.c_str()).y + t.px(2);
}

/// One lens: mark, name and list, numbers, what is wrong with it. Returns whether Fit was pressed.
bool draw_row(const PanelInput& in,
              const RowPlan& p,
              const study::ListedLens& listed,
              const LensChoice& c,
              const std::string& faults,
              bool fitted_now) {
    const Theme& t = in.theme;
    const float width = ImGui::GetContentRegionAvail().x;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float fault_width = p.button - p.name - t.px(10);
    const float height = t.px(32) + faults_height(t, faults, fault_width);
    if (fitted_now)
        list.AddRectFilled(at, {at.x + width, at.y + height}, packed(t.colour.raised), t.px(6));
    const auto verdict = is_good(c) ? study::Verdict::holds : study::Verdict::missed;
    paint_text(list, t.font.body, {at.x + p.mark, at.y + t.px(6)},
               verdict_colour(t.colour, verdict), study::verdict_mark(verdict));
    paint_text(list, t.font.body, {at.x + p.name, at.y + t.px(6)}, t.colour.text,
               fitted(t.font.body, listed.lens.name, p.name_width));
    paint_numbers(in, p, c, {at.x, at.y + t.px(8)});
    const float size = t.font.small->FontSize * ImGui::GetIO().FontGlobalScale;
    if (!faults.empty())
        list.AddText(t.font.small, size, {at.x + p.name, at.y + t.px(28)}, packed(t.colour.quiet),
                     faults.c_str(), nullptr, fault_width);
    ImGui::InvisibleButton("##name", {p.numbers, height});
    hint(t, listed.lens.name, "from: " + listed.list);
    ImGui::SetCursorScreenPos({at.x + p.button, at.y + t.px(2)});
    bool pressed = false;
    if (fitted_now)
        paint_text(list, t.font.small, {at.x + p.button + t.px(12), at.y + t.px(9)}, t.colour.quiet,
                   "fitted");
    else
        pressed = word_button(t, "Fit", t.px(64));
    ImGui::SetCursorScreenPos({at.x, at.y + height + t.px(2)});
    ImGui::Dummy({1.0f, 0.0f});
    return pressed;
}

/// The lenses of series that are tried too, each with a button that lets go of it.
void draw_series(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    if (word_button(t, "Open a series…", t.px(150))) out.actions.push_back(Action::open_series);
    hint(t, "Lenses of a series file are tried beside the layout's own");
    for (std::size_t i = 0; i < w.series.size(); ++i) {
        if (w.series[i].lenses.empty()) continue;
        ImGui::PushID(static_cast<int>(i));
        ImGui::SameLine(0.0f, t.px(16));
        ImGui::SetCursorPosY(ImGui::GetCursorPosY() + t.px(7));
        text_line(t.font.small, t.colour.text, w.series[i].name);
        hint(t, w.series[i].note.empty() ? w.series[i].name : w.series[i].note);
        ImGui::SameLine(0.0f, t.px(2));
        ImGui::SetCursorPosY(ImGui::GetCursorPosY() - t.px(7));
        const bool gone = icon_button(t, Icon::close, "Leave this series out");
        ImGui::PopID();
        if (!gone) continue;
        w.series.erase(w.series.begin() + static_cast<long>(i));
        ++w.series_serial;
        return;
    }
}

void ask_to_fit(const PanelInput& in,
                const Workspace& w,
                const LensPickCache& cache,
                const LensChoice& c,
                Requests& out) {
    const auto& listed = cache.catalogue[static_cast<std::size_t>(c.lens)];
    auto layout = with_lens(in.brief.layout, w.projector, w.format, listed.lens, c.focal_length_m);
    if (!layout) return;
    out.edit =
        Edit{"Fit lens " + base::quantity_text(c.focal_length_m, Unit::millimetre, in.units()),
             std::move(*layout),
             {}};
}

void draw_choices(const PanelInput& in,
                  const Workspace& w,
                  const LensPickCache& cache,
                  Requests& out) {
    const Theme& t = in.theme;
    const RowPlan rows = plan_rows(t, ImGui::GetContentRegionAvail().x - t.px(14));
    draw_heads(in, rows);
    const std::string now = fitted_lens(in.brief.layout, w.projector, w.format);
    const float room = ImGui::GetIO().DisplaySize.y * 0.86f - ImGui::GetCursorPosY() - t.px(64);
    float wanted = t.px(8);
    for (const std::string& faults : cache.faults)
        wanted += t.px(42) + (faults.empty() ? 0.0f : t.px(16));
    ImGui::BeginChild("lenses", {0.0f, std::clamp(wanted, t.px(60), std::max(room, t.px(120)))},
                      false, ImGuiWindowFlags_NoBackground);
    for (std::size_t i = 0; i < cache.pick->choices.size(); ++i) {
        const LensChoice& c = cache.pick->choices[i];
        const auto& listed = cache.catalogue[static_cast<std::size_t>(c.lens)];
        ImGui::PushID(static_cast<int>(i));
        const bool own = listed.list == study::kOwnLenses;
        if (draw_row(in, rows, listed, c, cache.faults[i], own && listed.lens.name == now))
            ask_to_fit(in, w, cache, c, out);
        ImGui::PopID();
    }
    ImGui::EndChild();
}

void draw_body(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    const LensPickCache& cache = lens_pick(in, w);
    if (!cache.pick) {
        text_wrapped(t.font.body, t.colour.quiet,
                     "This projector has no use for this format, so no lens is asked for. Choose "
                     "another pair at the top.");
        return;
    }
    text_wrapped(t.font.body, t.colour.text, cache.reason);
    text_wrapped(t.font.small, t.colour.quiet, cache.needed);
    if (!cache.pick->choices.empty()) draw_choices(in, w, cache, out);
    draw_series(in, w, out);
}

/// Whose lenses: "Lenses · Film 35 mm · 2.39".
std::string title_of(const study::Study& study, const Workspace& w) {
    const room::Layout& layout = study.layout();
    if (layout.projectors.empty() || layout.formats.empty()) return "Lenses";
    return "Lenses · " + layout.projectors[static_cast<std::size_t>(w.projector)].name + " · " +
           layout.formats[static_cast<std::size_t>(w.format)].name;
}

}  // namespace

void draw_lenses(const PanelInput& in, Workspace& w, Requests& out) {
    if (!w.lenses_open || !in.study) return;
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, t.px(64)}, ImGuiCond_Appearing, {0.5f, 0.0f});
    const float width = std::min(t.px(1080), display.x - t.px(32));
    const bool open = begin_floating(t, "##lenses", title_of(*in.study, w), width);
    draw_body(in, w, out);
    ImGui::End();
    if (!open) w.lenses_open = false;
}

}  // namespace rakeline::desk
