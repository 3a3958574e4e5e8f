// SPDX-License-Identifier: MIT
#include "desk/panels/panels.hpp"
#include "desk/panels/rake_results.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/number_field.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>
#include <limits>

namespace rakeline::desk {
namespace {

using base::Unit;

/// A restriction of lengths or angles: what it is called and means, its range, and what it is where
/// it is first asked for and the solver has no usual value.
struct Restricting {
    const char* label;
    const char* meaning;
    NumberSpec spec;
    double first;
    std::optional<double>& (*member)(sight::RakeOptions&);
};

const Restricting kRestrictings[] = {
    {"Greatest riser",
     "Of a row over the one in front",
     {Unit::millimetre, 0.0, sight::kGreatestRiser_m},
     0.4,
     [](sight::RakeOptions& o) -> std::optional<double>& { return o.riser_most_m; }},
    {"Greatest slope",
     "Of a row over the one in front, its spacing with a cross aisle",
     {Unit::radian, 0.0, base::radians(60.0)},
     base::radians(30.0),
     [](sight::RakeOptions& o) -> std::optional<double>& { return o.slope_most_rad; }},
    {"Headroom",
     "From the floor to the ceiling or a balcony, at least",
     {Unit::metre, 0.0, 10.0},
     2.05,
     [](sight::RakeOptions& o) -> std::optional<double>& { return o.headroom_m; }},
    {"Under the beam",
     "From the floor to the lower side of every beam, at least; the first row is not judged",
     {Unit::metre, 0.0, 10.0},
     1.31,
     [](sight::RakeOptions& o) -> std::optional<double>& { return o.beam_headroom_m; }},
};

/// Label at the left; returns where the field goes and how wide it is.
float begin_row(const Theme& t, const char* label, const char* meaning) {
    const float field = t.px(112);
    const float room = ImGui::GetContentRegionAvail().x - field;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, {at.x, at.y + t.px(7)}, t.colour.quiet,
               fitted(t.font.small, label, room - t.px(34)));
    ImGui::PushID(label);
    ImGui::InvisibleButton("##label", {room - t.px(30), t.px(28)});
    ImGui::PopID();
    hint(t, label, meaning);
    ImGui::SetCursorScreenPos({at.x + room, at.y});
    return field;
}

void draw_number(const PanelInput& in,
                 Workspace& w,
                 const char* label,
                 const char* meaning,
                 const NumberSpec& spec,
                 double& value) {
    const float field = begin_row(in.theme, label, meaning);
    number_field(in.theme, label, spec, in.units(), field, w.number, value);
}

/// A number that may be left open: the tick before it says whether it counts.
void draw_restricting(const PanelInput& in, Workspace& w, const Restricting& r) {
    const Theme& t = in.theme;
    std::optional<double>& member = r.member(w.rake.options);
    const float field = begin_row(t, r.label, r.meaning);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({at.x - t.px(28), at.y});
    bool on = member.has_value();
    if (tick(t, r.label, on)) {
        sight::RakeOptions usual = study::rake_options(*in.study, w.rake.block, in.units());
        member.reset();
        if (on) member = r.member(usual).value_or(r.first);
    }
    ImGui::SetCursorScreenPos(at);
    if (member)
        number_field(t, r.label, r.spec, in.units(), field, w.number, *member);
    else
        ImGui::Dummy({field, t.px(28)});
}

void draw_counts(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    sight::RakeOptions& options = w.rake.options;
    double rows = options.flight_rows;
    draw_number(in, w, "Rows a flight", "Rows that share a riser, at least",
                {Unit::count, 1.0, 50.0, true}, rows);
    options.flight_rows = static_cast<int>(rows);
    const float field = begin_row(t, "Flights at most", "How many different risers there may be");
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({at.x - t.px(28), at.y});
    bool on = options.flights_most.has_value();
    if (tick(t, "flights", on)) options.flights_most = on ? std::optional(3) : std::nullopt;
    ImGui::SetCursorScreenPos(at);
    if (!options.flights_most) return ImGui::Dummy({field, t.px(28)});
    double flights = *options.flights_most;
    number_field(t, "flights", {Unit::count, 1.0, 50.0, true}, in.units(), field, w.number,
                 flights);
    options.flights_most = static_cast<int>(flights);
}

void draw_options(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    sight::RakeOptions& options = w.rake.options;
    const int over = segmented(t, "over", {"Row in front", "Second row"},
                               options.over == sight::RakeOver::row_in_front ? 0 : 1);
    hint(t, "Whose heads are looked over",
         "Every second row where the seats are staggered and people look between the heads in "
         "front.");
    if (over >= 0)
        options.over = over == 0 ? sight::RakeOver::row_in_front : sight::RakeOver::second_row;
    draw_number(in, w, "Wanted C", "What every row sees over the eyes ahead",
                {Unit::millimetre, 0.0, 0.5}, options.wanted_c_m);
    draw_number(in, w, "Riser step", "Risers are whole multiples of it",
                {Unit::millimetre, 0.001, 0.5}, options.riser_step_m);
    draw_counts(in, w);
    for (const Restricting& r : kRestrictings)
        draw_restricting(in, w, r);
}

/// Another block or room starts from its own options.
void begin_afresh(const PanelInput& in, Workspace& w) {
    RakeChoice& rake = w.rake;
    const bool same = rake.block == w.floor.block && rake.document == w.document;
    if (same) return;
    rake.block = w.floor.block;
    rake.document = w.document;
    rake.refused_for = nullptr;
    rake.options = study::rake_options(*in.study, rake.block, in.units());
}

void draw_blocks(const PanelInput& in, Workspace& w) {
    std::vector<std::string> names;
    for (const room::SeatBlock& block : in.study->layout().seating)
        names.push_back(block.name);
    if (names.size() < 2) return;
    const int chosen = dropdown(in.theme, "##block", names, w.floor.block, in.theme.px(200));
    hint(in.theme, "The block whose floor is solved");
    if (chosen < 0) return;
    w.floor.block = chosen;
    w.selected = {};
}

}  // namespace

void draw_rake(const PanelInput& in, Workspace& w, Requests& out) {
    if (!w.rake.open || !in.study) return;
    const Theme& t = in.theme;
    const auto blocks = static_cast<int>(in.study->layout().seating.size());
    if (w.floor.block >= blocks) {
        w.rake.open = blocks > 0 && w.rake.open;
        w.floor.block = 0;
        if (!w.rake.open) return;
    }
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, t.px(54)}, ImGuiCond_Appearing, {0.5f, 0.0f});
    const float width = std::min(t.px(820), display.x - t.px(32));
    const bool open = begin_floating(t, "##rake", "Solve the floor", width);
    begin_afresh(in, w);
    const float options_width = t.px(262);
    const float height = t.px(344);
    ImGui::BeginChild("options", {options_width, height}, false, ImGuiWindowFlags_NoBackground);
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {t.px(8), t.px(4)});
    draw_blocks(in, w);
    draw_options(in, w);
    ImGui::PopStyleVar();
    ImGui::EndChild();
    ImGui::SameLine(0.0f, t.px(20));
    ImGui::BeginChild("answer", {0.0f, height}, false, ImGuiWindowFlags_NoBackground);
    draw_rake_answer(in, w, out);
    ImGui::EndChild();
    ImGui::End();
    out.rake = RakeWish{w.rake.block, w.rake.options};
    if (!open) w.rake.open = false;
}

}  // namespace rakeline::desk
