// SPDX-License-Identifier: MIT
#include "desk/widgets/seat_picture.hpp"

#include "desk/luminance_choice.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/luminance_scale.hpp"
#include "desk/widgets/text.hpp"

namespace rakeline::desk {
namespace {

void paint(const PanelInput& in, Workspace& w, ImVec2 at, ImVec2 end, float rounding) {
    const Theme& t = in.theme;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (!in.pictures || in.study->layout().formats.empty()) {
        list.AddRectFilled(at, end, packed(t.colour.panel), rounding);
        return;
    }
    const RoomPictures::SeatLook look{
        .seat = w.selected.index,
        .format = w.format,
        .heads = w.seat_heads,
        .width = static_cast<int>((end.x - at.x) * in.raster_scale),
        .height = static_cast<int>((end.y - at.y) * in.raster_scale),
        .luminance = w.luminance ? screen_luminance(in, w).screen : nullptr};
    list.AddImageRounded(in.pictures->from_seat(look), at, end, {0, 1}, {1, 0}, IM_COL32_WHITE,
                         rounding);
}

void switches(const PanelInput& in, Workspace& w, ImVec2 at, float width) {
    const Theme& t = in.theme;
    const std::vector<std::string> heads{"Heads"};
    const std::vector<std::string> large{w.from_seat ? "The hall · E" : "Large · E"};
    const ImVec2 low{at.x + t.px(8), at.y + t.px(8)};
    const float right = at.x + width - segmented_width(t, large) - t.px(8);
    ImGui::SetCursorScreenPos(low);
    if (segmented(t, "seat heads", heads, w.seat_heads ? 0 : -1) == 0) w.seat_heads = !w.seat_heads;
    hint(t, "Somebody in every other seat. Hatched: what a full house hides from here");
    ImGui::SetCursorScreenPos({low.x + segmented_width(t, heads) + t.px(8), low.y});
    luminance_switch(in, w);
    ImGui::SetCursorScreenPos({right, low.y});
    if (segmented(t, "seat large", large, -1) == 0) w.from_seat = !w.from_seat;
}

/// An old mark must not pass for a fresh one.
void age(const PanelInput& in, ImVec2 low) {
    if (in.current) return;
    const Theme& t = in.theme;
    const std::string words = "△ as it was before the last edit";
    const float width = text_width(t.font.small, words);
    const ImVec2 from{low.x + t.px(8), low.y - t.px(30)};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(from, {from.x + width + t.px(16), low.y - t.px(8)},
                       packed(t.colour.raised, 0.94f), t.px(4));
    paint_text(list, t.font.small, {from.x + t.px(8), from.y + t.px(3)}, t.colour.lamp, words);
}

}  // namespace

bool sees_from_seat(const PanelInput& in, const Workspace& w) {
    return in.study && w.from_seat && w.selected.kind == drawing::Shows::Kind::seat;
}

void seat_picture(const PanelInput& in, Workspace& w, ImVec2 size, float rounding) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 end{at.x + size.x, at.y + size.y};
    ImGui::PushID("seat picture");
    paint(in, w, at, end, rounding);
    switches(in, w, at, size.x);
    age(in, {at.x, end.y});
    ImGui::SetCursorScreenPos(at);
    ImGui::Dummy(size);
    ImGui::PopID();
}

}  // namespace rakeline::desk
