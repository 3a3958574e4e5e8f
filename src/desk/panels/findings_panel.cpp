// SPDX-License-Identifier: MIT
#include "desk/figure_view.hpp"
#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"

#include <algorithm>
#include <cfloat>

namespace rakeline::desk {
namespace {

/// What one card says, whatever it is of.
struct CardWords {
    std::string what, against, mend;
    study::Verdict verdict = study::Verdict::missed;
    bool elsewhere = false;  ///< of a format or projector that is not the chosen one
};

float wrapped_height(ImFont* font, const std::string& text, float width) {
    const float size = font->FontSize * ImGui::GetIO().FontGlobalScale;
    return font->CalcTextSizeA(size, FLT_MAX, width, text.c_str()).y;
}

/// Paints one paragraph and returns the height that it took.
float paint_wrapped(
    ImFont* font, ImVec2 at, const ImVec4& colour, const std::string& text, float width) {
    if (text.empty()) return 0.0f;
    const float size = font->FontSize * ImGui::GetIO().FontGlobalScale;
    ImGui::GetWindowDrawList()->AddText(font, size, at, packed(colour), text.c_str(), nullptr,
                                        width);
    return wrapped_height(font, text, width);
}

bool card(const Theme& t, const CardWords& words) {
    const float width = ImGui::GetContentRegionAvail().x;
    const float inset = t.px(14), gap = t.px(4);
    const float room = std::max(width - 2.0f * inset, t.px(40));
    float height = 2.0f * t.px(10) + wrapped_height(t.font.body, words.what, room);
    for (const std::string* line : {&words.against, &words.mend})
        if (!line->empty()) height += gap + wrapped_height(t.font.small, *line, room);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const bool pressed = ImGui::InvisibleButton("##card", {std::max(width, 1.0f), height});
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(at, {at.x + width, at.y + height},
                       packed(ImGui::IsItemHovered() ? t.colour.line : t.colour.raised), t.px(8));
    const float strength = words.elsewhere ? 0.4f : 1.0f;
    list.AddRectFilled({at.x, at.y + t.px(9)}, {at.x + t.px(2), at.y + height - t.px(9)},
                       packed(verdict_colour(t.colour, words.verdict), strength));
    ImVec2 pen{at.x + inset, at.y + t.px(10)};
    pen.y += paint_wrapped(t.font.body, pen, words.elsewhere ? t.colour.quiet : t.colour.text,
                           words.what, room) +
             gap;
    if (!words.against.empty())
        pen.y += paint_wrapped(t.font.small, pen, t.colour.quiet, words.against, room) + gap;
    paint_wrapped(t.font.small, pen, words.elsewhere ? t.colour.quiet : t.colour.lamp, words.mend,
                  room);
    return pressed;
}

bool elsewhere(const study::Finding& finding, const Workspace& w) {
    const study::Place& p = finding.place;
    return (p.projector && *p.projector != w.projector) || (p.format && *p.format != w.format);
}

/// Goes where a finding points.
void go_to(const study::Finding& finding, Workspace& w) {
    using Kind = drawing::Shows::Kind;
    const study::Place& p = finding.place;
    w.subject = finding.subject;
    if (p.projector) w.projector = *p.projector;
    if (p.format) w.format = *p.format;
    if (p.loudspeaker) w.loudspeaker = *p.loudspeaker;
    if (p.seat)
        w.selected = {Kind::seat, *p.seat};
    else if (p.row)
        w.selected = {Kind::row, *p.row};
    else if (p.loudspeaker)
        w.selected = {Kind::loudspeaker, *p.loudspeaker};
    else if (p.projector)
        w.selected = {Kind::projector, *p.projector};
    const study::FigureDefinition* figure = study::find_definition(finding.figure);
    w.seat_figure = figure && figure->per.seat ? finding.figure : std::string{};
}

std::string count_words(const study::Study& study) {
    const auto count = [&](study::Verdict verdict) {
        return std::count_if(study.findings.begin(), study.findings.end(),
                             [verdict](const auto& f) { return f.verdict == verdict; });
    };
    return std::to_string(count(study::Verdict::missed)) + " missed · " +
           std::to_string(count(study::Verdict::near)) + " near";
}

void draw_problems(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    text_wrapped(t.font.small, t.colour.missed,
                 in.study ? "This layout can't be studied. The figures are those of the last one "
                            "that could; undo, or mend this:"
                          : "This layout can't be studied yet:");
    for (std::size_t i = 0; i < in.problems.size(); ++i) {
        const base::Problem& problem = in.problems[i];
        ImGui::PushID(static_cast<int>(i));
        if (card(t, {problem.what, problem.where, problem.mend, study::Verdict::missed, false}))
            w.reveal = problem.where;
        ImGui::PopID();
    }
}

/// The cards of the chosen projector and format, or those of all others.
void draw_cards(const PanelInput& in, Workspace& w, bool others) {
    for (const std::size_t i : finding_order(*in.study, w.subject)) {
        const study::Finding& finding = in.study->findings[i];
        if (elsewhere(finding, w) != others) continue;
        ImGui::PushID(static_cast<int>(i) + 1000);
        const CardWords words{finding.what_in(in.units()), finding.against_in(in.units()),
                              finding.mend, finding.verdict, others};
        if (card(in.theme, words)) {
            go_to(finding, w);
            ImGui::PopID();
            return;
        }
        ImGui::PopID();
    }
}

void draw_findings(const PanelInput& in, Workspace& w) {
    const Theme& t = in.theme;
    if (in.study->findings.empty())
        text_wrapped(t.font.body, t.colour.holds,
                     count_limits(*in.study).all > 0
                         ? "✓ Every limit of the set holds, in every format."
                         : "No limit is held against this room: its limits file names none.");
    draw_cards(in, w, false);
    const auto& all = in.study->findings;
    if (std::none_of(all.begin(), all.end(), [&](const auto& f) { return elsewhere(f, w); }))
        return;
    group_heading(t, "In other formats or projectors");
    draw_cards(in, w, true);
}

}  // namespace

void draw_findings_panel(const PanelInput& in, Workspace& w, Requests&) {
    const Theme& t = in.theme;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    text_line(t.font.title, t.colour.text, in.problems.empty() ? "Findings" : "Problems");
    if (in.study && in.problems.empty())
        paint_text_right(*ImGui::GetWindowDrawList(), t.font.small, {at.x + width, at.y + t.px(8)},
                         t.colour.quiet,
                         (*following_word(in) ? std::string(following_word(in)) + " · " : "") +
                             count_words(*in.study));
    const std::string list = "list" + std::to_string(w.document);
    ImGui::BeginChild(list.c_str(), {0, 0}, false, ImGuiWindowFlags_NoBackground);
    if (!in.problems.empty()) draw_problems(in, w);
    if (in.study && in.problems.empty()) draw_findings(in, w);
    ImGui::EndChild();
}

}  // namespace rakeline::desk
