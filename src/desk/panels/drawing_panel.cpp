// SPDX-License-Identifier: MIT
#include "desk/curve_choice.hpp"
#include "desk/figure_view.hpp"
#include "desk/panels/panels.hpp"
#include "desk/strip.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "desk/widgets/luminance_scale.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace rakeline::desk {
namespace {

void move_drawing(Workspace& w, ImVec2 low, ImVec2 high) {
    const ImGuiIO& io = ImGui::GetIO();
    if (ImGui::IsItemActive() && ImGui::IsMouseDragging(ImGuiMouseButton_Left))
        w.look.offset +=
            glm::dvec2{static_cast<double>(io.MouseDelta.x), static_cast<double>(io.MouseDelta.y)};
    if (!ImGui::IsItemHovered()) return;
    if (ImGui::IsMouseDoubleClicked(ImGuiMouseButton_Left)) w.look = {};
    if (io.MouseWheel == 0.0f) return;
    // The point under the pointer stays where it is.
    const double before = w.look.zoom;
    w.look.zoom =
        std::clamp(before * std::pow(1.15, static_cast<double>(io.MouseWheel)), 1.0, 60.0);
    const glm::dvec2 from_centre{
        static_cast<double>(io.MousePos.x - (low.x + high.x) / 2.0f) - w.look.offset.x,
        static_cast<double>(io.MousePos.y - (low.y + high.y) / 2.0f) - w.look.offset.y};
    w.look.offset += from_centre * (1.0 - w.look.zoom / before);
    if (w.look.zoom == 1.0) w.look = {};
}

void point_at(const PanelInput& in,
              Workspace& w,
              const drawing::Drawing& drawing,
              const DrawingView& view) {
    if (!ImGui::IsItemHovered() && !ImGui::IsItemDeactivated()) return;
    const ImGuiIO& io = ImGui::GetIO();
    const double reach = static_cast<double>(in.theme.px(7)) / view.scale;
    const drawing::Shows shows = drawing::shown_at(drawing, view.to_drawing(io.MousePos), reach);
    if (shows.kind != drawing::Shows::Kind::nothing) w.hovered = shows;
    const ImVec2 moved = io.MouseDragMaxDistanceAbs[0];
    const bool still = moved.x < io.MouseDragThreshold && moved.y < io.MouseDragThreshold;
    // From a seat only another seat can be looked at: a click on the picture keeps this one.
    const bool keeps = w.strip == StripDrawing::seat && shows.kind != drawing::Shows::Kind::seat;
    if (ImGui::IsItemDeactivated() && still && !keeps)
        w.selected = shows.kind == drawing::Shows::Kind::hall ? drawing::Shows{} : shows;
    const std::string name = name_of(*in.study, shows);
    if (!name.empty()) hint(in.theme, name);
}

/// The most even curve or tilt, put into the layout.
void draw_take(const PanelInput& in, const Workspace& w, Requests& out) {
    constexpr std::pair<SurfacePart, const char*> kButtons[] = {{SurfacePart::curve, "Take curve"},
                                                                {SurfacePart::tilt, "Take tilt"}};
    for (const auto& [part, name] : kButtons) {
        if (segmented(in.theme, name, {name}, -1) == 0) out.edit = take_surface(in, w, part);
        hint(in.theme, take_words(in, w, part));
        ImGui::SameLine(0.0f, in.theme.px(4));
    }
}

/// What belongs to the drawing shown: lines over the plan's seats, whose sight lines the section
/// has, the blur over the screen, the side that a plate is seen from, the surface to take.
void draw_toggles(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    if (w.strip == StripDrawing::plan) {
        ImGui::SameLine(0.0f, t.px(16));
        if (segmented(t, "contours", {"Contours"}, w.contours ? 0 : -1) == 0)
            w.contours = !w.contours;
        hint(t, "Lines of equal value over the seats, of the figure that colours them");
    }
    if (w.strip == StripDrawing::plan || w.strip == StripDrawing::section) {
        ImGui::SameLine(0.0f, t.px(8));
        if (segmented(t, "coverage", {"Coverage"}, w.coverage ? 0 : -1) == 0)
            w.coverage = !w.coverage;
        hint(t, "Axes and -6 dB edges in the octave looked at",
             "Of the selected loudspeaker; else of all behind the screen");
    }
    if (w.strip == StripDrawing::screen) {
        ImGui::SameLine(0.0f, t.px(16));
        if (segmented(t, "blur", {"Blur"}, w.blur ? 0 : -1) == 0) w.blur = !w.blur;
        hint(t, "The blur at best focus over the picture");
    }
    if (w.strip == StripDrawing::screen || w.strip == StripDrawing::seat) {
        ImGui::SameLine(0.0f, t.px(w.strip == StripDrawing::screen ? 8 : 16));
        luminance_switch(in, w);
    }
    if (w.strip == StripDrawing::section) {
        ImGui::SameLine(0.0f, t.px(16));
        const bool all = w.sight_lines == drawing::SightLines::all;
        const int rows = segmented(t, "sight lines", {"Every row", "Selected"}, all ? 0 : 1);
        hint(t, "Sight lines to the picture's lower edge: of every row, or of the selected seat's");
        if (rows >= 0)
            w.sight_lines = rows == 0 ? drawing::SightLines::all : drawing::SightLines::selected;
    }
    if (w.strip == StripDrawing::curve) {
        ImGui::SameLine(0.0f, t.px(16));
        draw_take(in, w, out);
    }
    if (w.strip == StripDrawing::plate) {
        ImGui::SameLine(0.0f, t.px(16));
        const int side = segmented(t, "side", {"From lamp", "From lens"}, w.from_lens ? 1 : 0);
        if (side >= 0) w.from_lens = side == 1;
    }
}

/// At the right of the buttons, or below them where it would be cut off there: half a scale, or
/// none of the word that a number is old, is worse than another place.
void draw_aside(const Theme& t, const std::string& words) {
    if (words.empty()) return;
    ImGui::SameLine(0.0f, t.px(12));
    ImVec2 at = ImGui::GetCursorScreenPos();
    at.y += t.px(7);
    const float right = ImGui::GetWindowPos().x + ImGui::GetWindowWidth() - t.px(8);
    const float width = text_width(t.font.small, words);
    if (at.x + width > right) at = {right - width, at.y + t.px(25)};
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, at, t.colour.quiet, words);
}

void draw_head(
    const PanelInput& in, Workspace& w, Requests& out, const std::string& aside, ImVec2 at) {
    const Theme& t = in.theme;
    ImGui::SetCursorScreenPos({at.x + t.px(12), at.y + t.px(8)});
    const auto strips = offered_strips(w);
    std::vector<std::string> names;
    for (const StripDrawing strip : strips)
        names.emplace_back(strip_name(strip));
    const auto on = std::find(strips.begin(), strips.end(), w.strip) - strips.begin();
    const int pressed = segmented(t, "strip", names, static_cast<int>(on));
    if (pressed >= 0) {
        w.strip = strips[static_cast<std::size_t>(pressed)];
        w.look = {};
    }
    draw_toggles(in, w, out);
    draw_aside(t, aside);
}

/// Why there is no drawing, in its place.
void draw_refusal(const PanelInput& in, const base::Problems& refused, ImVec2 low, ImVec2 high) {
    const Theme& t = in.theme;
    ImGui::SetCursorScreenPos({low.x, low.y + (high.y - low.y) * 0.3f});
    ImGui::BeginGroup();
    ImGui::PushTextWrapPos(high.x - ImGui::GetWindowPos().x);
    for (const base::Problem& problem : refused) {
        text_line(t.font.body, t.colour.text, sentence(problem.what));
        text_line(t.font.small, t.colour.lamp, sentence(problem.mend));
    }
    ImGui::PopTextWrapPos();
    ImGui::EndGroup();
}

/// In place of the first trials of curve and tilt.
void draw_waiting(const Theme& t, ImVec2 low) {
    paint_text(*ImGui::GetWindowDrawList(), t.font.body, low, t.colour.quiet,
               "Trying curves and tilts of the screen…");
}

}  // namespace

void draw_drawing_panel(const PanelInput& in, Workspace& w, Requests& out) {
    if (!in.study) return;
    const bool curve = w.strip == StripDrawing::curve;
    const bool old = in.current && curve && !curves_current(in, w);
    // The handles are of the layout, never behind.
    const PanelInput shown = old ? behind(in) : of_study(in);
    const std::string follows = old ? "following" : following_word(in);
    out.curves = curve;
    const Theme& t = shown.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = ImGui::GetContentRegionAvail();
    if (size.x < 8.0f || size.y < 8.0f) return;
    choose_floor_block(in, w);
    const ImVec2 low{at.x + t.px(24), at.y + t.px(40)};
    const ImVec2 high{at.x + size.x - t.px(24), at.y + size.y - t.px(16)};
    const DrawingCache& cache = strip_drawing(in, w, {high.x - low.x, high.y - low.y});
    ImGui::InvisibleButton("##drawing", size);
    ImGui::SetItemAllowOverlap();
    if (!cache.drawing) {
        move_drawing(w, low, high);
        if (cache.refused.empty()) draw_waiting(t, low);
        draw_refusal(in, cache.refused, low, high);
        return draw_head(shown, w, out, follows, at);
    }
    const drawing::Drawing& drawing = *cache.drawing;
    DrawingView view = fitted_view(drawing, low, high, w.look);
    const bool held = hold_floor(in, w, out, view);
    if (!held) {
        move_drawing(w, low, high);
        view = fitted_view(drawing, low, high, w.look);
        point_at(in, w, drawing, view);
    }
    if (w.floor.drag) view = w.floor.drag->view;
    const bool over = ImGui::IsItemHovered();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.PushClipRect(at, {at.x + size.x, at.y + size.y}, true);
    paint_drawing(t, list, drawing, view, {w.hovered, w.selected, in.units()});
    if (w.strip == StripDrawing::section) paint_rake_preview(in, w, view);
    if (over || held) paint_floor_handles(in, w, view);
    list.PopClipRect();
    // What an eye sees, and a chart, have no scale.
    const bool scaled = w.strip != StripDrawing::seat && w.strip != StripDrawing::decay &&
                        w.strip != StripDrawing::loss && !curve;
    const std::string scale = scaled ? "about " + scale_text(t, view) : "";
    const char* between = scaled && !follows.empty() ? " · " : "";
    draw_head(shown, w, out, scale + between + follows, at);
}

}  // namespace rakeline::desk
