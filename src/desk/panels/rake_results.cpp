// SPDX-License-Identifier: MIT
#include "desk/panels/rake_results.hpp"

#include "desk/panels/panels.hpp"
#include "desk/widgets/controls.hpp"
#include "desk/widgets/text.hpp"
#include "sight/aisle_steps.hpp"
#include "study/rake_words.hpp"

#include <algorithm>

namespace rakeline::desk {
namespace {

using base::Unit;
using sight::RakeStage;

void draw_problems(const Theme& t, const base::Problems& problems) {
    for (const base::Problem& problem : problems) {
        text_wrapped(t.font.body, t.colour.missed, sentence(problem.what));
        text_wrapped(t.font.small, t.colour.lamp, sentence(problem.mend));
    }
}

void cell(const Theme& t, const ImVec4& ink, const std::string& text) {
    ImGui::TableNextColumn();
    text_line(t.font.small_figures, ink, text);
}

/// "1.94 m", "80.3 mm · B", "4.2 mm".
void draw_stage(const PanelInput& in,
                const sight::RakePlan& plan,
                const RakeStage& stage,
                double& short_before) {
    const Theme& t = in.theme;
    const auto length = [&](double m) {
        return base::quantity_text(m, Unit::millimetre, in.units());
    };
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    text_line(t.font.small, t.colour.text,
              fitted(t.font.small, study::restriction_title(stage.restriction),
                     ImGui::GetContentRegionAvail().x));
    if (stage.floor_m.empty() || !stage.least_row) {
        for (int i = 0; i < 3; ++i)
            cell(t, t.colour.quiet, "–");
        return;
    }
    const auto row = static_cast<std::size_t>(*stage.least_row);
    const double short_by = stage.meets ? 0.0 : -stage.spare_m(plan.options.wanted_c_m);
    cell(t, t.colour.text, base::quantity_text(stage.rise_m(), Unit::metre, in.units()));
    cell(t, stage.meets ? t.colour.text : t.colour.missed,
         length(stage.sights[row]->c_m) + " · " + plan.rows.rows[row].letter);
    const double cost = short_by - short_before;
    short_before = short_by;
    cell(t, cost > 0.0 ? t.colour.missed : t.colour.quiet, cost > 0.0 ? length(cost) : "none");
}

void draw_stages(const PanelInput& in, const sight::RakePlan& plan) {
    const Theme& t = in.theme;
    if (!ImGui::BeginTable("stages", 4, ImGuiTableFlags_BordersInnerH)) return;
    ImGui::TableSetupColumn("##what", ImGuiTableColumnFlags_WidthStretch, 1.7f);
    for (const char* name : {"##rise", "##c", "##cost"})
        ImGui::TableSetupColumn(name, ImGuiTableColumnFlags_WidthStretch, 1.0f);
    ImGui::TableNextRow();
    for (const char* head :
         {"each on top of those above", "last row up", "least C · row", "costs in C"}) {
        ImGui::TableNextColumn();
        text_line(t.font.small, t.colour.quiet,
                  fitted(t.font.small, head, ImGui::GetContentRegionAvail().x));
    }
    double short_before = 0.0;
    for (const RakeStage& stage : plan.stages)
        draw_stage(in, plan, stage, short_before);
    ImGui::EndTable();
}

/// An edit that the solver proposes, or why it can't be.
void propose(const PanelInput& in,
             Workspace& w,
             Requests& out,
             const std::string& label,
             base::Result<room::Layout> made) {
    if (!made) {
        const base::Problem& why = made.problems().front();
        w.rake.refusal = sentence(why.what) + " " + sentence(why.mend);
        w.rake.refused_for = in.history.current();
        w.rake.refused_with = w.rake.options;
        return;
    }
    out.edit = Edit{label, std::move(*made), {}};
}

void draw_floor(const PanelInput& in, Workspace& w, Requests& out, const RakeAnswer& answer) {
    const Theme& t = in.theme;
    if (!answer.plan) return draw_problems(t, answer.plan.problems());
    const sight::RakePlan& plan = *answer.plan;
    const bool meets = plan.buildable() && plan.built().meets;
    text_wrapped(t.font.body, meets ? t.colour.holds : t.colour.missed,
                 (meets ? "✓ " : "✗ ") + study::rake_verdict(plan, in.units()));
    draw_stages(in, plan);
    if (!plan.buildable()) return;
    if (lamp_button(t, "Build this floor", t.px(160)))
        propose(in, w, out, "Build the solved floor",
                study::raked_layout(in.brief.layout, answer.question.block, plan.built().floor_m));
    hint(t, "Puts the floor into the layout, as flights; undo takes it back");
}

std::string decided_by(const RakeAnswer& answer, const sight::ReverseRake& found) {
    const study::Study& study = *answer.question.study;
    const auto& rows = study.seats.rows;
    const auto first = std::find_if(rows.begin(), rows.end(), [&](const room::Row& row) {
        return row.block == answer.question.block;
    });
    const auto row =
        static_cast<std::size_t>(first - rows.begin()) + static_cast<std::size_t>(found.row);
    return "row " + rows.at(row).letter + " in " +
           study.layout().formats.at(static_cast<std::size_t>(found.format)).name + " decides";
}

/// A sentence with a button after it.
bool draw_proposal(const Theme& t, const std::string& words, const std::string& button) {
    const float width = t.px(112);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float room = ImGui::GetContentRegionAvail().x - width - t.px(10);
    paint_text(*ImGui::GetWindowDrawList(), t.font.small, {at.x, at.y + t.px(7)}, t.colour.text,
               fitted(t.font.small, words, room));
    ImGui::InvisibleButton((words + "##words").c_str(), {std::max(room, 1.0f), t.px(28)});
    hint(t, words);
    if (button.empty()) return false;
    ImGui::SetCursorScreenPos({at.x + room + t.px(10), at.y});
    return word_button(t, button, width);
}

void draw_sill(const PanelInput& in, Workspace& w, Requests& out, const RakeAnswer& answer) {
    if (!answer.sill || !*answer.sill) return;
    const sight::ReverseRake& found = **answer.sill;
    const auto metres = [&](double m) {
        return base::quantity_text(m, Unit::metre, in.units(), 1);
    };
    const std::string words = "Lowest sill for this floor: " + metres(found.value_m) + ", now " +
                              metres(in.brief.layout.screen.sill_m) + "; " +
                              decided_by(answer, found);
    if (draw_proposal(in.theme, words, "Set sill"))
        propose(in, w, out, "Set the lowest sill",
                study::with_sill(in.brief.layout, found.value_m));
}

void draw_spacing(const PanelInput& in, Workspace& w, Requests& out, const RakeAnswer& answer) {
    if (!answer.spacing) return;
    const Theme& t = in.theme;
    if (!*answer.spacing) {
        draw_proposal(t, "No row spacing gives the wanted C on this floor.", {});
        return;
    }
    const sight::SpacingRange& found = **answer.spacing;
    const auto metres = [&](double m) {
        return base::quantity_text(m, Unit::metre, in.units(), 1);
    };
    const std::string words = "Row spacing from " + metres(found.least.value_m) + " to " +
                              metres(found.greatest.value_m) +
                              (found.from_bottom ? std::string("; no row asks for more")
                                                 : "; " + decided_by(answer, found.least));
    if (draw_proposal(t, words, found.from_bottom ? "" : "Set least"))
        propose(in, w, out, "Set the least row spacing",
                study::with_spacing(in.brief.layout, answer.question.block, found.least.value_m));
    hint(t, "Whether people can pass along the rows is for the local code, not for this sum.");
}

void draw_cautions_of(const PanelInput& in, const RakeAnswer& answer) {
    if (!answer.plan || !answer.plan->buildable()) return;
    const Theme& t = in.theme;
    for (const std::string& caution :
         study::rake_cautions(*answer.plan, sight::kAisleStepMost_m, in.units()))
        text_wrapped(t.font.small, t.colour.quiet, "△ " + caution);
}

}  // namespace

const RakeAnswer* rake_answer(const PanelInput& in, const Workspace& w) {
    if (!w.rake.open || !in.rake || !in.current) return nullptr;
    const RakeQuestion& asked = in.rake->question;
    const bool same = same_brief(asked.study.get(), in.study) && asked.block == w.rake.block &&
                      asked.options == w.rake.options;
    return same ? in.rake : nullptr;
}

void draw_rake_answer(const PanelInput& in, Workspace& w, Requests& out) {
    const Theme& t = in.theme;
    const RakeAnswer* answer = rake_answer(in, w);
    if (!answer)
        return text_wrapped(t.font.body, t.colour.quiet,
                            in.problems.empty() ? "Working it out…"
                                                : "The layout can't be studied, so no floor is "
                                                  "solved. The findings column says why.");
    ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {t.px(8), t.px(6)});
    draw_floor(in, w, out, *answer);
    if (w.rake.refused_for == in.history.current() && w.rake.refused_with == w.rake.options)
        text_wrapped(t.font.small, t.colour.missed, w.rake.refusal);
    group_heading(t, "The other way round, for the floor as it is");
    draw_sill(in, w, out, *answer);
    draw_spacing(in, w, out, *answer);
    draw_cautions_of(in, *answer);
    ImGui::PopStyleVar();
}

void paint_rake_preview(const PanelInput& in, const Workspace& w, const DrawingView& view) {
    const RakeAnswer* answer = rake_answer(in, w);
    if (!answer || !answer->plan || !answer->plan->buildable()) return;
    const sight::RakePlan& plan = *answer->plan;
    const auto& floor = plan.built().floor_m;
    const auto block = static_cast<std::size_t>(answer->question.block);
    double back = answer->question.study->layout().seating.at(block).first_row_back_m;
    std::vector<ImVec2> line;
    for (std::size_t n = 0; n < floor.size(); ++n) {
        back += plan.rows.rows[n].spacing_m;
        // A tread reaches half a row forward and back from the seats' reference line.
        const double behind =
            n + 1 < floor.size() ? plan.rows.rows[n + 1].spacing_m : plan.rows.rows[n].spacing_m;
        const double ahead = n > 0 ? plan.rows.rows[n].spacing_m : behind;
        line.push_back(view.to_pixel({back - 0.5 * ahead, floor[n]}));
        line.push_back(view.to_pixel({back + 0.5 * behind, floor[n]}));
    }
    ImGui::GetWindowDrawList()->AddPolyline(line.data(), static_cast<int>(line.size()),
                                            packed(in.theme.colour.lamp), ImDrawFlags_None,
                                            2.0f * in.theme.scale);
}

}  // namespace rakeline::desk
