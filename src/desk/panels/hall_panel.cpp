// SPDX-License-Identifier: MIT
#include "desk/camera_moves.hpp"
#include "desk/figure_view.hpp"
#include "desk/luminance_choice.hpp"
#include "desk/panels/panels.hpp"
#include "desk/seat_colours.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/luminance_scale.hpp"
#include "desk/widgets/seat_picture.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

/// The view's field on the display.
struct Field {
    ImVec2 at, size;
};

void move_camera(Workspace& w, const Field& field) {
    const ImGuiIO& io = ImGui::GetIO();
    view::Camera& camera = w.hall_camera.camera;
    const glm::dvec2 drag{static_cast<double>(io.MouseDelta.x),
                          static_cast<double>(io.MouseDelta.y)};
    if (ImGui::IsItemActive() && (drag.x != 0.0 || drag.y != 0.0)) {
        const bool left = io.MouseDown[0] && !io.KeyShift;
        if (left && ImGui::IsMouseDragging(ImGuiMouseButton_Left))
            orbit(camera, drag);
        else if (!left)
            pan(camera, drag, static_cast<double>(field.size.y));
    }
    if (ImGui::IsItemHovered() && io.MouseWheel != 0.0f)
        zoom(camera, static_cast<double>(io.MouseWheel));
}

bool clicked_without_drag() {
    const ImVec2 drag = ImGui::GetIO().MouseDragMaxDistanceAbs[0];
    const float most = ImGui::GetIO().MouseDragThreshold;
    return ImGui::IsItemHovered() && ImGui::IsMouseReleased(ImGuiMouseButton_Left) &&
           drag.x < most && drag.y < most;
}

void pick(const PanelInput& in, Workspace& w, const Field& field) {
    if (!in.pictures || !ImGui::IsItemHovered() || ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        if (!in.pictures || !clicked_without_drag()) return;
    }
    const ImGuiIO& io = ImGui::GetIO();
    const bool clicked = clicked_without_drag();
    // Looking under the pointer costs a pass of its own: only where it has come to rest, or clicks.
    if (!clicked && (io.MouseDelta.x != 0.0f || io.MouseDelta.y != 0.0f)) return;
    const auto scale = static_cast<double>(in.raster_scale);
    const glm::dvec2 at{static_cast<double>(io.MousePos.x - field.at.x) * scale,
                        static_cast<double>(io.MousePos.y - field.at.y) * scale};
    const drawing::Shows shows = in.pictures->pick(at);
    const bool thing =
        shows.kind != drawing::Shows::Kind::nothing && shows.kind != drawing::Shows::Kind::hall;
    if (thing) w.hovered = shows;
    if (clicked) w.selected = thing ? shows : drawing::Shows{};
}

void hover_name(const PanelInput& in, const Workspace& w, const SeatColours& colours) {
    const std::string name = name_of(*in.study, w.hovered);
    if (name.empty() || !ImGui::IsItemHovered()) return;
    std::string value;
    if (colours.figure && w.hovered.kind == drawing::Shows::Kind::seat)
        if (const auto si = study::value_at(*colours.figure, w.hovered.index))
            value = std::string(colours.figure->definition->label) + " " +
                    base::quantity_text(*si, colours.figure->definition->unit, in.units());
    hint(in.theme, name, value);
}

void draw_gradient(const Theme& t, const SeatColours& colours, ImVec2 at, float width) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    constexpr int kSteps = 24;
    for (int i = 0; i < kSteps; ++i) {
        const float left = at.x + width * static_cast<float>(i) / kSteps;
        const float right = at.x + width * static_cast<float>(i + 1) / kSteps;
        const ImU32 a = packed(legend_colour(colours, static_cast<double>(i) / kSteps));
        const ImU32 b = packed(legend_colour(colours, static_cast<double>(i + 1) / kSteps));
        list.AddRectFilledMultiColor({left, at.y}, {right, at.y + t.px(8)}, a, b, b, a);
    }
}

void draw_scale(const PanelInput& in, const SeatColours& colours, float width) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const base::Unit unit = colours.figure->definition->unit;
    const ImVec2 under{at.x, at.y + t.px(12)};
    if (colours.alike) {
        list.AddRectFilled(at, {at.x + width, at.y + t.px(8)}, packed(legend_colour(colours, 1.0)));
    } else {
        draw_gradient(t, colours, at, width);
    }
    paint_text(
        list, t.font.small, under, t.colour.quiet,
        colours.alike ? "all seats alike" : base::quantity(colours.least, unit, in.units()).number);
    if (*following_word(in))
        paint_text(list, t.font.small, {at.x + width + t.px(12), under.y}, t.colour.quiet,
                   following_word(in));
    paint_text_right(list, t.font.small, {at.x + width, under.y}, t.colour.quiet,
                     base::quantity_text(colours.greatest, unit, in.units()));
    const auto missed = std::count(colours.figure->verdicts.begin(), colours.figure->verdicts.end(),
                                   study::Verdict::missed);
    if (missed > 0)
        paint_text(list, t.font.small, {at.x + width + t.px(12), at.y - t.px(4)}, t.colour.missed,
                   "✗ " + std::to_string(missed) + (missed == 1 ? " seat" : " seats"));
    ImGui::Dummy({width, t.px(28)});
}

void draw_legend(const PanelInput& in, Workspace& w, const SeatColours& colours, ImVec2 at) {
    const Theme& t = in.theme;
    std::vector<std::string> names{"As the subject suggests", "Plain seats"};
    std::vector<std::string> ids{"", kPlainSeats};
    for (const study::Figure* figure : seat_figures(*in.study, w)) {
        names.emplace_back(figure->definition->label);
        ids.emplace_back(figure->definition->id);
    }
    // The user's choice stays while its crowd is drawn.
    const auto* chosen_one = study::find_definition(w.seat_figure);
    if (!in.study->crowd && chosen_one && study::needs_crowd(*chosen_one)) {
        names.push_back(std::string(chosen_one->label) + ", " + awaited_words(in));
        ids.push_back(w.seat_figure);
    }
    const std::string shown = colours.figure ? colours.figure->definition->id : w.seat_figure;
    const auto on = std::find(ids.begin(), ids.end(), shown) - ids.begin();
    const float width = t.px(210);
    const ImVec2 low{at.x + t.px(8), at.y + t.px(8)};
    const ImVec2 high{low.x + width + t.px(colours.figure ? 96 : 16),
                      low.y + t.px(colours.figure ? 78 : 44)};
    ImGui::GetWindowDrawList()->AddRectFilled(low, high, packed(t.colour.panel, 0.82f), t.px(8));
    ImGui::SetCursorScreenPos({low.x + t.px(8), low.y + t.px(8)});
    ImGui::BeginGroup();
    const int chosen = dropdown(t, "##colouring", names, static_cast<int>(on), width);
    if (chosen >= 0) w.seat_figure = ids[static_cast<std::size_t>(chosen)];
    hint(t, "The figure that colours the seats");
    if (colours.figure) draw_scale(in, colours, width);
    ImGui::EndGroup();
}

void draw_view_buttons(const PanelInput& in, Workspace& w, Requests& out, const Field& field) {
    const Theme& t = in.theme;
    const float side = icon_button_side(t);
    const ImVec2 low{field.at.x + field.size.x - 2.0f * side - t.px(8), field.at.y + t.px(8)};
    ImGui::SetCursorScreenPos({low.x - luminance_switch_width(t) - t.px(8), low.y});
    luminance_switch(in, w);
    ImGui::GetWindowDrawList()->AddRectFilled(low, {low.x + 2.0f * side, low.y + side},
                                              packed(t.colour.panel, 0.82f), t.px(8));
    ImGui::SetCursorScreenPos(low);
    if (icon_button(t, Icon::beam, w.show_beams ? "Hide the beams · B" : "Show the beams · B"))
        w.show_beams = !w.show_beams;
    ImGui::SameLine(0.0f, 0.0f);
    if (icon_button(t, Icon::fit, "Fit the hall · F")) out.actions.push_back(Action::fit_view);
}

void draw_luminance_scale(const PanelInput& in, Workspace& w, const Field& field) {
    const float gap = in.theme.px(8);
    luminance_scale(in, w, {field.at.x + gap, field.at.y + field.size.y - gap},
                    field.size.x - 2.0f * gap);
}

void empty_view(const PanelInput& in, const Field& field) {
    const Theme& t = in.theme;
    const std::string words = in.study ? "No 3D view here" : "Studying the room…";
    const ImVec2 middle{field.at.x + (field.size.x - text_width(t.font.body, words)) / 2.0f,
                        field.at.y + field.size.y / 2.0f};
    paint_text(*ImGui::GetWindowDrawList(), t.font.body, middle, t.colour.quiet, words);
}

}  // namespace

void draw_hall_panel(const PanelInput& in, Workspace& w, Requests& out) {
    const Field field{ImGui::GetCursorScreenPos(), ImGui::GetContentRegionAvail()};
    if (field.size.x < 8.0f || field.size.y < 8.0f) return;
    if (!in.study || !in.pictures) empty_view(in, field);
    if (!in.study) return;
    if (sees_from_seat(in, w)) {
        seat_picture(in, w, field.size, 0.0f);
        if (w.luminance) draw_luminance_scale(in, w, field);
        return;
    }
    const SeatColours colours = seat_colours(*in.study, w);
    if (!w.hall_camera.fitted) {
        w.hall_camera.camera = view::overview(*in.study);
        w.hall_camera.fitted = true;
    }
    ImGui::InvisibleButton("##hall", field.size,
                           ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                               ImGuiButtonFlags_MouseButtonMiddle);
    ImGui::SetItemAllowOverlap();
    move_camera(w, field);
    if (in.pictures) {
        const int width = static_cast<int>(field.size.x * in.raster_scale);
        const int height = static_cast<int>(field.size.y * in.raster_scale);
        const auto lit = w.luminance ? screen_luminance(in, w).screen : nullptr;
        const ImTextureID picture = in.pictures->hall(w.hall_camera.camera, width, height, lit);
        ImGui::GetWindowDrawList()->AddImage(picture, field.at,
                                             {field.at.x + field.size.x, field.at.y + field.size.y},
                                             {0, 1}, {1, 0});
    }
    pick(in, w, field);
    hover_name(in, w, colours);
    draw_legend(in, w, colours, field.at);
    draw_view_buttons(in, w, out, field);
    if (w.luminance) draw_luminance_scale(in, w, field);
}

}  // namespace rakeline::desk
