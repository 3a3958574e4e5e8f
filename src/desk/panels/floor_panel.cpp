// SPDX-License-Identifier: MIT
#include "desk/floor_drag.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::desk {
namespace {

constexpr float kReach_px = 8.0f;
/// A press that moves less than this is a click.
constexpr float kStill_px = 3.0f;

RowsMoved rows_wished() {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.KeyCtrl) return RowsMoved::whole_block;
    return io.KeyShift ? RowsMoved::alone : RowsMoved::and_behind;
}

std::optional<FloorHandle> handle_under(const std::vector<FloorHandle>& handles,
                                        const DrawingView& view,
                                        const Theme& t) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    std::optional<FloorHandle> nearest;
    float least = t.px(kReach_px);
    for (const FloorHandle& handle : handles) {
        const ImVec2 at = view.to_pixel(handle.at);
        const float away = std::hypot(at.x - mouse.x, at.y - mouse.y);
        if (away >= least) continue;
        nearest = handle;
        least = away;
    }
    return nearest;
}

bool bends_both_ways(const FloorHandle& handle) {
    return handle.moves_back && handle.moves_up;
}

void take_hold(const PanelInput& in, Workspace& w, const DrawingView& view) {
    FloorGrip& grip = w.floor;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    FloorDrag drag;
    drag.handle = *grip.hovered;
    drag.start = in.history.current();
    drag.view = view;
    drag.grab = drag.handle.at - view.to_drawing(mouse);
    drag.pressed = mouse;
    drag.gesture = "floor handle " + std::to_string(++grip.drags);
    grip.cancelled = false;
    grip.drag = std::move(drag);
}

/// A handle that moves both ways keeps to the way in which it began, unless Ctrl is held.
void choose_way(FloorDrag& drag) {
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    const float across = std::abs(mouse.x - drag.pressed.x);
    const float up = std::abs(mouse.y - drag.pressed.y);
    if (std::max(across, up) < kStill_px) return;
    drag.moved = true;
    if (!drag.along) drag.along = across > up ? HandleAxis::back : HandleAxis::up;
}

void follow_hand(const PanelInput& in, FloorDrag& drag, Requests& out) {
    choose_way(drag);
    if (!drag.moved) return;
    DragWish wish{.rows = rows_wished(), .snap = !ImGui::GetIO().KeyAlt, .units = in.units()};
    if (bends_both_ways(drag.handle) && !ImGui::GetIO().KeyCtrl) {
        wish.back = drag.along == HandleAxis::back;
        wish.up = drag.along == HandleAxis::up;
    }
    const glm::dvec2 to = drag.view.to_drawing(ImGui::GetIO().MousePos) + drag.grab;
    Dragged made = dragged(drag.start->layout, drag.handle, to, wish);
    drag.stopped = std::move(made.stopped);
    if (made.layout == in.brief.layout) return;
    out.edit = Edit{"Drag " + handle_name(drag.start->layout, drag.handle), std::move(made.layout),
                    drag.gesture};
}

/// Where the drag began: as an edit of the same gesture, which then leaves no step.
void put_back(const FloorDrag& drag, Requests& out) {
    out.edit = Edit{"Drag " + handle_name(drag.start->layout, drag.handle), drag.start->layout,
                    drag.gesture};
    out.end_gesture = true;
}

void select_under(const PanelInput& in, const FloorHandle& handle, Workspace& w) {
    using Kind = drawing::Shows::Kind;
    const bool row = handle.of == HandleOf::row || handle.of == HandleOf::first_row;
    if (handle.of == HandleOf::sill || handle.of == HandleOf::screen_top)
        w.selected = {Kind::screen, 0};
    if (!row) return;
    const auto& rows = in.study->seats.rows;
    const auto first = std::find_if(rows.begin(), rows.end(),
                                    [&](const room::Row& r) { return r.block == handle.block; });
    const auto index = static_cast<int>(first - rows.begin()) + handle.index;
    if (index < static_cast<int>(rows.size())) w.selected = {Kind::row, index};
}

void drag_on(const PanelInput& in, Workspace& w, Requests& out) {
    FloorDrag& drag = *w.floor.drag;
    if (w.floor.cancelled) {
        put_back(drag, out);
        w.floor.drag.reset();
        return;
    }
    if (ImGui::IsItemActive()) return follow_hand(in, drag, out);
    if (drag.moved)
        out.end_gesture = true;
    else
        select_under(in, drag.handle, w);
    w.floor.drag.reset();
}

void open_typing(Workspace& w) {
    FloorGrip& grip = w.floor;
    grip.typed = grip.hovered;
    grip.typed_at = ImGui::GetIO().MousePos;
    grip.refusal.clear();
    w.number = {};
    w.number.take_next = true;
}

/// What a drag does, and what the keys change about it.
std::string drag_words(const PanelInput& in, const FloorHandle& handle) {
    const std::string end = "Alt: without steps · double-click types";
    if (handle.of == HandleOf::row) {
        const HandleNumber all =
            handle_number(in.brief.layout, handle, HandleAxis::up, RowsMoved::whole_block);
        return "Drag lifts this row and those behind it, as flights · Shift: this row alone · "
               "Ctrl: " +
               sentence(all.label) + " " + end;
    }
    if (handle.of == HandleOf::first_row && handle.moves_up)
        return "Drag moves the block, back or up · Shift: the floor of this row alone · Ctrl: both "
               "ways · " +
               end;
    return bends_both_ways(handle) ? "Drag moves it, back or up · Ctrl: both ways · " + end
                                   : "Drag moves it · " + end;
}

/// "Riser of row F: 180 mm", a line for each way in which it moves.
std::vector<std::string> value_lines(const PanelInput& in,
                                     const FloorHandle& handle,
                                     RowsMoved rows) {
    std::vector<std::string> out;
    for (const HandleAxis axis : {HandleAxis::back, HandleAxis::up}) {
        if (!(axis == HandleAxis::back ? handle.moves_back : handle.moves_up)) continue;
        const HandleNumber number = handle_number(in.brief.layout, handle, axis, rows);
        out.push_back(number.label + ": " +
                      base::quantity_text(number.si, number.unit, in.units()));
    }
    return out;
}

void show_numbers(const PanelInput& in, const FloorHandle& handle, const FloorDrag* drag) {
    const Theme& t = in.theme;
    const ImVec2 mouse = ImGui::GetIO().MousePos;
    // Over the hand: what is dragged and stands behind it must be seen.
    if (drag) ImGui::SetNextWindowPos({mouse.x + t.px(20), mouse.y - t.px(28)}, 0, {0.0f, 1.0f});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {t.px(12), t.px(10)});
    ImGui::BeginTooltip();
    ImGui::PushTextWrapPos(t.px(320));
    const RowsMoved rows = drag ? rows_wished() : RowsMoved::and_behind;
    for (const std::string& line : value_lines(in, handle, rows))
        text_line(t.font.body, t.colour.text, line);
    if (!drag) text_line(t.font.small, t.colour.quiet, drag_words(in, handle));
    if (drag && drag->stopped) {
        text_line(t.font.small, t.colour.missed, "Stopped: " + sentence(drag->stopped->what));
        text_line(t.font.small, t.colour.lamp, sentence(drag->stopped->mend));
    }
    if (drag && !drag->stopped) text_line(t.font.small, t.colour.quiet, "Esc puts it back");
    ImGui::PopTextWrapPos();
    ImGui::EndTooltip();
    ImGui::PopStyleVar();
}

ImGuiMouseCursor cursor_of(const FloorHandle& handle) {
    if (bends_both_ways(handle)) return ImGuiMouseCursor_ResizeAll;
    return handle.moves_back ? ImGuiMouseCursor_ResizeEW : ImGuiMouseCursor_ResizeNS;
}

/// Ticks on both sides, the way in which the handle moves.
void paint_ways(const Theme& t, ImDrawList& list, const FloorHandle& handle, ImVec2 at, ImU32 ink) {
    const float from = t.px(8), to = t.px(13);
    for (const float side : {-1.0f, 1.0f}) {
        if (handle.moves_back)
            list.AddLine({at.x + side * from, at.y}, {at.x + side * to, at.y}, ink, 2.0f * t.scale);
        if (handle.moves_up)
            list.AddLine({at.x, at.y + side * from}, {at.x, at.y + side * to}, ink, 2.0f * t.scale);
    }
}

void paint_handle(const Theme& t, const FloorHandle& handle, ImVec2 at, bool hot) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = packed(hot ? t.colour.lamp : t.colour.text, hot ? 1.0f : 0.8f);
    const float r = hot ? t.px(5) : t.px(3);
    const bool square = handle.of != HandleOf::row;
    if (square) {
        list.AddRectFilled({at.x - r, at.y - r}, {at.x + r, at.y + r}, packed(t.colour.ground));
        list.AddRect({at.x - r, at.y - r}, {at.x + r, at.y + r}, ink, 0.0f, 0, 1.5f * t.scale);
    } else {
        list.AddCircleFilled(at, r, packed(t.colour.ground));
        list.AddCircle(at, r, ink, 0, 1.5f * t.scale);
    }
    if (hot) paint_ways(t, list, handle, at, ink);
}

}  // namespace

void choose_floor_block(const PanelInput& in, Workspace& w) {
    using Kind = drawing::Shows::Kind;
    const room::SeatPlan& plan = in.study->seats;
    const auto at = static_cast<std::size_t>(w.selected.index);
    std::optional<std::size_t> row;
    if (w.selected.kind == Kind::row) row = at;
    if (w.selected.kind == Kind::seat && at < plan.seats.size())
        row = static_cast<std::size_t>(plan.seats[at].row);
    if (row && *row < plan.rows.size() && !w.floor.drag) w.floor.block = plan.rows[*row].block;
    const auto blocks = static_cast<int>(in.brief.layout.seating.size());
    if (w.floor.block >= blocks) w.floor.block = 0;
}

bool hold_floor(const PanelInput& in, Workspace& w, Requests& out, const DrawingView& view) {
    FloorGrip& grip = w.floor;
    grip.hovered.reset();
    if (w.strip != StripDrawing::section) {
        grip.drag.reset();
        return false;
    }
    if (grip.drag) {
        drag_on(in, w, out);
        if (grip.drag) {
            ImGui::SetMouseCursor(cursor_of(grip.drag->handle));
            if (grip.drag->moved) show_numbers(in, grip.drag->handle, &*grip.drag);
        }
        return true;
    }
    if (grip.cancelled) {  // the button is still down: the drawing must not move with it
        grip.cancelled = ImGui::IsItemActive();
        return true;
    }
    const bool free =
        ImGui::IsItemHovered() && (!ImGui::IsItemActive() || ImGui::IsItemActivated());
    if (free)
        grip.hovered = handle_under(floor_handles(in.brief.layout, grip.block), view, in.theme);
    if (!grip.hovered) return false;
    ImGui::SetMouseCursor(cursor_of(*grip.hovered));
    if (ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left))
        open_typing(w);
    else if (ImGui::IsItemActivated())
        take_hold(in, w, view);
    else if (!grip.typed)
        show_numbers(in, *grip.hovered, nullptr);
    return true;
}

void paint_floor_handles(const PanelInput& in, const Workspace& w, const DrawingView& view) {
    if (w.strip != StripDrawing::section) return;
    const FloorGrip& grip = w.floor;
    for (const FloorHandle& handle : floor_handles(in.brief.layout, grip.block)) {
        const bool hot = (grip.hovered && grip.hovered->same_as(handle)) ||
                         (grip.drag && grip.drag->handle.same_as(handle));
        paint_handle(in.theme, handle, view.to_pixel(handle.at), hot);
    }
}

}  // namespace rakeline::desk
