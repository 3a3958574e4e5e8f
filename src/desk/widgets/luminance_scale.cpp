// SPDX-License-Identifier: MIT
#include "desk/widgets/luminance_scale.hpp"

#include "desk/luminance_choice.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/drawing_canvas.hpp"
#include "desk/widgets/text.hpp"
#include "drawing/luminance_shading.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

const std::vector<std::string> kSwitch{"Luminance"};

std::string heading(const PanelInput& in, const Workspace& w, const LuminanceCache& cache) {
    if (cache.key.seat < 0) return "No luminance: the room has no seats";
    if (!cache.screen) return "No luminance: this projector does not show the format";
    const auto& name = in.study->seats.seats.at(static_cast<std::size_t>(cache.key.seat)).name;
    const bool chosen = w.selected.kind == drawing::Shows::Kind::seat;
    return chosen ? "The screen as seat " + name + " sees it"
                  : "The screen as the reference seat, " + name + ", sees it";
}

}  // namespace

float luminance_switch_width(const Theme& t) {
    return segmented_width(t, kSwitch);
}

void luminance_switch(const PanelInput& in, Workspace& w) {
    if (segmented(in.theme, "luminance", kSwitch, w.luminance ? 0 : -1) == 0)
        w.luminance = !w.luminance;
    hint(in.theme,
         "The screen's luminance as the selected seat sees it, else the reference seat, with lines "
         "of equal luminance");
}

void luminance_scale(const PanelInput& in, Workspace& w, ImVec2 corner, float most_width) {
    const Theme& t = in.theme;
    const LuminanceCache& cache = screen_luminance(in, w);
    const std::string words = heading(in, w, cache);
    const float line = t.px(18), pad = t.px(8);
    const float lines = cache.screen ? static_cast<float>(drawing::kScaleLines) : 0.0f;
    const float scale_width = cache.screen ? line * static_cast<float>(kScaleWidth_lines) : 0.0f;
    const float width =
        std::min(std::max(scale_width, text_width(t.font.small, words)) + 2.0f * pad, most_width);
    const ImVec2 low{corner.x, corner.y - (lines + 1.2f) * line - 2.0f * pad};
    const ImVec2 high{corner.x + width, corner.y};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(low, high, packed(t.colour.panel, 0.90f), t.px(8));
    paint_text(list, t.font.small, {low.x + pad, low.y + pad}, t.colour.text,
               fitted(t.font.small, words, width - 2.0f * pad));
    if (!cache.screen) return;
    const DrawingView view = fitted_view(cache.scale, {low.x + pad, low.y + pad + 1.2f * line},
                                         {high.x - pad, high.y - pad}, {});
    paint_drawing(t, list, cache.scale, view, {{}, {}, in.units()});
}

}  // namespace rakeline::desk
