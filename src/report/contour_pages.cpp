// SPDX-License-Identifier: MIT
#include "report/drawing_pages.hpp"
#include "report/figure_words.hpp"

#include <algorithm>

/// Lines of equal value over the seating plan, a page a figure; for a house with a balcony, a page
/// a level.
namespace rakeline::report {
namespace {

constexpr const char* kFigures[] = {"sight.subtended_width", "sight.off_axis", "sight.hidden",
                                    "sound.screen_lead"};

void draw_contour_page(Pages& pages,
                       const ReportInput& in,
                       const study::Figure& figure,
                       std::optional<bool> raised) {
    drawing::DrawingChoice choice = chosen_drawing(in);
    choice.seat_figure = &figure;
    choice.contours = true;
    choice.dimensions = false;
    choice.raised = raised;
    drawing::Drawing plan = drawing::plan(in.study, choice);
    const std::string level = !raised ? "" : *raised ? ", balcony" : ", floor";
    plan.title = "Over the seats: " + std::string(figure.definition->label) + level;
    const std::string of = figure_of(in.study, figure);
    draw_drawing_page(pages, in, plan,
                      of + (of.empty() ? "" : "   ·   ") +
                          "lines of equal value at eye height, heavy at a limit\n" +
                          figure.definition->meaning,
                      &figure);
}

}  // namespace

void draw_contour_pages(Pages& pages, const ReportInput& in) {
    if (in.format < 0) return;
    const auto& seating = in.study.layout().seating;
    const bool balcony = std::any_of(seating.begin(), seating.end(),
                                     [](const room::SeatBlock& block) { return block.raised; });
    study::Place place;
    place.format = in.format;
    for (const char* id : kFigures) {
        const study::Figure* figure = study::find_figure(in.study, id, place);
        if (!figure) continue;
        if (!balcony) {
            draw_contour_page(pages, in, *figure, {});
            continue;
        }
        for (const bool raised : {false, true})
            draw_contour_page(pages, in, *figure, raised);
    }
}

}  // namespace rakeline::report
