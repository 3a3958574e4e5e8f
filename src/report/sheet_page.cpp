// SPDX-License-Identifier: MIT
#include "drawing/hole_patch.hpp"
#include "drawing/perforation_plot.hpp"
#include "report/drawing_pages.hpp"
#include "study/perforation_words.hpp"

/// What is seen of the screen's holes, and other sheets set against the one that hangs.
namespace rakeline::report {
namespace {

constexpr double kPatch = 0.62;  ///< width of the piece of sheet over the page's
constexpr double kGap_pt = 8.0;

void draw_across(Pages& pages,
                 const ReportInput& in,
                 const drawing::Drawing& drawing,
                 double share) {
    const glm::dvec2 size = drawing.high - drawing.low;
    const double width = share * pages.content().width;
    const double height = width * size.y / size.x;
    pages.make_room(height);
    const Box box{pages.content().x, pages.y(), width, height};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(drawing, fitted(drawing, box));
    pages.gap(height + kGap_pt);
}

/// The first digital picture that beats with the holes, else the first of all; the report's own
/// projector may be one for film.
drawing::DrawingChoice digital_choice(const ReportInput& in) {
    drawing::DrawingChoice choice = chosen_drawing(in);
    if (!in.study.holes.beats.empty()) {
        choice.projector = in.study.holes.beats.front().projector;
        choice.format = in.study.holes.beats.front().format;
        return choice;
    }
    const room::Layout& layout = in.study.layout();
    for (const picture::ProjectedPicture& p : in.study.picture.pictures) {
        const auto& machine = layout.projectors.at(static_cast<std::size_t>(p.projector));
        if (machine.kind != room::SourceKind::digital) continue;
        choice.projector = p.projector;
        choice.format = p.format;
        return choice;
    }
    return choice;
}

void draw_beats(Pages& pages, const ReportInput& in) {
    const room::Layout& layout = in.study.layout();
    for (const picture::ProjectedPicture& p : in.study.picture.pictures) {
        pages.paragraph(layout.projectors.at(static_cast<std::size_t>(p.projector)).name + " · " +
                            layout.formats.at(static_cast<std::size_t>(p.format)).name + ": " +
                            study::beat_words(in.study, p.projector, p.format, in.units()),
                        pages.body());
    }
}

}  // namespace

void draw_sheet_page(Pages& pages, const ReportInput& in) {
    const room::Perforation& holes = in.study.layout().screen.perforation;
    if (holes.pattern == room::PerforationPattern::none || in.projector < 0 || in.format < 0)
        return;
    const auto trials = study::sheet_trials(in.study, in.options.sheets);
    pages.chapter("The screen's holes: " + study::sheet_words(holes, in.units()));
    const auto patch = drawing::hole_patch(in.study, digital_choice(in));
    if (patch) draw_across(pages, in, *patch, kPatch);
    draw_beats(pages, in);
    pages.paragraph(study::turn_words(*trials, in.units()), pages.body());
    pages.gap(kGap_pt);
    if (!in.options.sheets.empty()) {
        pages.heading("Other sheets in this room");
        draw_across(pages, in, drawing::perforation_plot(*trials), 1.0);
    }
    for (const std::string& words : study::sheet_scope(in.study))
        pages.paragraph(words, pages.quiet(type::kSmall));
}

}  // namespace rakeline::report
