// SPDX-License-Identifier: MIT
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/floating_window.hpp"
#include "desk/widgets/text.hpp"
#include "desk/width_choice.hpp"

#include <algorithm>
#include <iterator>

namespace rakeline::desk {
namespace {

void draw_share(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    std::vector<std::string> names;
    for (const double share : kWidthShares)
        names.push_back(std::to_string(static_cast<int>(100.0 * share + 0.5)) + " %");
    const auto on = std::find(std::begin(kWidthShares), std::end(kWidthShares), w.width_share) -
                    std::begin(kWidthShares);
    const int pressed = segmented(t, "share", names, static_cast<int>(on));
    if (pressed >= 0) w.width_share = kWidthShares[pressed];
    hint(t, "Share of the seats that are to keep their limits on viewing angles");
}

void take(const PanelInput& in, Workspace& w, double width_m, Requests& out) {
    auto edit = width_edit(in, w.format, width_m);
    if (edit)
        out.edit = std::move(*edit);
    else
        w.notice = sentence(edit.problems().front().what);
}

void offer(const PanelInput& in, Workspace& w, const char* which, double width_m, Requests& out) {
    const Theme& t = in.theme;
    const std::string words =
        which + base::quantity_text(width_m, base::Unit::metre, in.units(), 1);
    if (word_button(t, words, t.px(210))) take(in, w, width_m, out);
    hint(t, "Makes the whole screen larger or smaller in proportion, the sill as it is",
         "Lenses, light and sound follow: look at their findings");
}

/// The ends of every range, as edits.
void draw_ends(const PanelInput& in,
               Workspace& w,
               const study::WidthAdvice& advice,
               Requests& out) {
    for (std::size_t i = 0; i < advice.ranges.size(); ++i) {
        const study::WidthRange& range = advice.ranges[i];
        ImGui::PushID(static_cast<int>(i));
        offer(in, w, "Take the widest, ", range.most_m, out);
        if (!range.below.empty()) {
            ImGui::SameLine(0.0f, in.theme.px(8));
            offer(in, w, "Take the narrowest, ", range.least_m, out);
        }
        ImGui::PopID();
    }
}

void draw_body(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    draw_share(in, w);
    const WidthCache& cache = picture_widths(in, w);
    for (const base::Problem& problem : cache.refused)
        text_wrapped(t.font.body, t.colour.quiet, sentence(problem.what));
    for (std::size_t i = 0; i < cache.words.size(); ++i) {
        const bool first = i == 0;
        text_wrapped(first ? t.font.body : t.font.small, first ? t.colour.text : t.colour.quiet,
                     cache.words[i]);
        if (first && cache.advice) draw_ends(in, w, *cache.advice, out);
    }
}

}  // namespace

void draw_widths(const PanelInput& in, Workspace& w, Requests& out) {
    if (!w.widths_open || !in.study || in.study->layout().formats.empty()) return;
    const Theme& t = in.theme;
    const ImVec2 display = ImGui::GetIO().DisplaySize;
    ImGui::SetNextWindowPos({display.x / 2.0f, t.px(64)}, ImGuiCond_Appearing, {0.5f, 0.0f});
    const float width = std::min(t.px(620), display.x - t.px(32));
    const auto& format = in.study->layout().formats.at(static_cast<std::size_t>(w.format));
    if (!begin_floating(t, "##widths", "Picture width · " + format.name, width))
        w.widths_open = false;
    draw_body(in, w, out);
    ImGui::End();
}

}  // namespace rakeline::desk
