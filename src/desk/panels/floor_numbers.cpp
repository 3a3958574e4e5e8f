// SPDX-License-Identifier: MIT
#include "base/units.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/number_field.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

/// One number of the handle that is typed.
struct Typed {
    HandleAxis axis = HandleAxis::up;
    RowsMoved rows = RowsMoved::and_behind;
};

std::vector<Typed> numbers_of(const FloorHandle& handle) {
    std::vector<Typed> out;
    if (handle.moves_back) out.push_back({HandleAxis::back, RowsMoved::and_behind});
    if (handle.moves_up) out.push_back({HandleAxis::up, RowsMoved::and_behind});
    if (handle.of == HandleOf::row) out.push_back({HandleAxis::up, RowsMoved::whole_block});
    return out;
}

/// Wider than any field of a layout: what does not hold there is refused with its reason.
NumberSpec spec_of(base::Unit unit) {
    if (unit == base::Unit::radian) return {unit, base::radians(-45.0), base::radians(45.0)};
    return {unit, -200.0, 200.0};
}

void take(const PanelInput& in,
          Workspace& w,
          Requests& out,
          const Typed& typed,
          const HandleNumber& number) {
    FloorGrip& grip = w.floor;
    auto made = with_number(in.brief.layout, *grip.typed, typed.axis, typed.rows, number.si);
    if (!made) {
        const base::Problem& why = made.problems().front();
        grip.refusal = sentence(why.what) + " " + sentence(why.mend);
        return;
    }
    grip.refusal.clear();
    out.edit = Edit{"Set " + number.label, std::move(*made), "floor number"};
}

/// Returns whether the number is done with.
bool draw_number(const PanelInput& in, Workspace& w, Requests& out, const Typed& typed) {
    const Theme& t = in.theme;
    HandleNumber number = handle_number(in.brief.layout, *w.floor.typed, typed.axis, typed.rows);
    const float field = t.px(130), room = ImGui::GetContentRegionAvail().x - field - t.px(8);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    paint_text(*ImGui::GetWindowDrawList(), t.font.body, {at.x, at.y + t.px(5)}, t.colour.quiet,
               fitted(t.font.body, number.label, room));
    ImGui::SetCursorScreenPos({at.x + room + t.px(8), at.y});
    const NumberOutcome outcome = number_field(t, number.label.c_str(), spec_of(number.unit),
                                               in.units(), field, w.number, number.si);
    if (outcome.changed) take(in, w, out, typed, number);
    if (outcome.finished) out.end_gesture = true;
    return outcome.finished && !w.number.dragged && !w.number.take_next;
}

}  // namespace

void draw_floor_numbers(const PanelInput& in, Workspace& w, Requests& out) {
    FloorGrip& grip = w.floor;
    if (!grip.typed) return;
    const auto handles = floor_handles(in.brief.layout, grip.typed->block);
    const bool there = std::any_of(handles.begin(), handles.end(), [&](const FloorHandle& handle) {
        return handle.same_as(*grip.typed);
    });
    if (!there) return grip.typed.reset();
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    const float width = t.px(340);
    const ImVec2 at{std::clamp(grip.typed_at.x - width / 2.0f, 0.0f, display.x - width),
                    std::max(grip.typed_at.y - t.px(170), t.px(56))};
    ImGui::SetNextWindowPos(at, ImGuiCond_Appearing);
    bool done = !begin_floating(t, "##floor numbers",
                                heading(handle_name(in.brief.layout, *grip.typed)), width);
    for (const Typed& typed : numbers_of(*grip.typed))
        done = draw_number(in, w, out, typed) || done;
    if (!grip.refusal.empty()) text_wrapped(t.font.small, t.colour.missed, grip.refusal);
    ImGui::End();
    if (done && grip.refusal.empty()) grip.typed.reset();
}

}  // namespace rakeline::desk
