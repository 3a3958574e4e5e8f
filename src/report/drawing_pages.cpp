// SPDX-License-Identifier: MIT
#include "report/drawing_pages.hpp"

#include "base/number_text.hpp"
#include "base/units.hpp"
#include "report/chapters.hpp"
#include "report/figure_words.hpp"

#include <algorithm>
#include <array>

namespace rakeline::report {
namespace {

/// Scales that a rule of the trade reads; the last for halls that no theatre is.
constexpr std::array<double, 14> kScales = {20,  25,  50,  75,  100, 125,  150,
                                            200, 250, 300, 400, 500, 1000, 2000};

constexpr double kAbove_pt = 54.0;  ///< title and legend over a drawing
constexpr double kBelow_pt = 34.0;  ///< scale bar under it

/// The largest scale at which the drawing fits into a box of this size; nothing if none does.
std::optional<double> scale_for(const drawing::Drawing& drawing, double width, double height) {
    const glm::dvec2 extent = drawing.high - drawing.low;
    for (const double scale : kScales) {
        const double points = points_per_metre(scale);
        if (extent.x * points <= width && extent.y * points <= height) return scale;
    }
    return std::nullopt;
}

struct Fit {
    bool landscape = false;
    double scale = 0.0;
};

/// Upright or lying, whichever shows the drawing larger, whichever way the page before it lies.
std::optional<Fit> fit_of(const drawing::Drawing& drawing, const Box& page) {
    const double beside = 2.0 * page.x;
    constexpr double kMargins_pt = 108.0;  // over and under the content, whichever way it lies
    const double taken = kMargins_pt + kAbove_pt + kBelow_pt;
    const auto [narrow, wide] = std::minmax({page.width + beside, page.height + kMargins_pt});
    const auto upright = scale_for(drawing, narrow - beside, wide - taken);
    const auto lying = scale_for(drawing, wide - beside, narrow - taken);
    if (!upright && !lying) return std::nullopt;
    if (!lying || (upright && *upright <= *lying)) return Fit{false, *upright};
    return Fit{true, *lying};
}

/// A bar of a round length that is some 30 to 60 mm long on paper.
struct ScaleBar {
    double length_m = 1.0;
    int parts = 5;
};

ScaleBar bar_for(double scale, base::UnitSystem units) {
    const double unit_m = units == base::UnitSystem::metric ? 1.0 : base::kMetresPerFoot;
    constexpr double kLeastOnPaper_m = 0.030;
    for (const double length : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0})
        if (length * unit_m / scale >= kLeastOnPaper_m) return {length * unit_m, 5};
    return {500.0 * unit_m, 5};
}

void draw_scale_bar(Pages& pages, double scale, base::UnitSystem units) {
    const ScaleBar bar = bar_for(scale, units);
    const Box box = pages.content();
    const double step = bar.length_m / bar.parts * points_per_metre(scale);
    const double y = box.bottom() - 14.0;
    const Rgb ink = pages.theme().text;
    for (int i = 0; i < bar.parts; ++i) {
        cairo_rectangle(pages.to(), box.x + i * step, y, step, 3.0);
        cairo_set_source_rgb(pages.to(), ink.r, ink.g, ink.b);
        cairo_set_line_width(pages.to(), 0.5);
        if (i % 2 == 0) cairo_fill_preserve(pages.to());
        cairo_stroke(pages.to());
    }
    const auto shown = base::shown_scale(base::Unit::metre, units);
    TextStyle style = pages.quiet(type::kSmall);
    pages.lettering().draw(pages.to(), box.x, y - 10.0, "0", style);
    style.anchor = drawing::Anchor::centre;
    pages.lettering().draw(pages.to(), box.x + bar.parts * step, y - 10.0,
                           base::fixed_text(bar.length_m * shown.factor, 0) + " " + shown.unit,
                           style);
}

void draw_scale_note(Pages& pages, double scale, const char* sheet) {
    const Box box = pages.content();
    TextStyle style = pages.body();
    style.anchor = drawing::Anchor::right;
    style.strength = Strength::medium;
    pages.lettering().draw(pages.to(), box.right(), box.bottom() - 24.0,
                           "1 : " + base::fixed_text(scale, 0), style);
    style = pages.quiet(type::kSmall);
    style.anchor = drawing::Anchor::right;
    pages.lettering().draw(pages.to(), box.right(), box.bottom() - 12.0,
                           std::string("true when ") + sheet + " is printed at full size", style);
}

void draw_legend(Pages& pages, const std::string& text, const study::Figure* figure) {
    const double y = pages.y() - 4.0;
    pages.lettering().draw(pages.to(), pages.content().x, y, text, pages.quiet());
    if (!figure) return;
    double x = pages.content().right();
    for (const auto verdict :
         {study::Verdict::missed, study::Verdict::near, study::Verdict::holds}) {
        static constexpr const char* kWords[] = {"", " holds", " near", " missed"};
        TextStyle style = pages.body();
        style.size_pt = type::kTable;
        style.anchor = drawing::Anchor::right;
        style.colour = verdict_colour(pages.theme(), verdict);
        const std::string words =
            std::string(study::verdict_mark(verdict)) + kWords[static_cast<std::size_t>(verdict)];
        x -= pages.lettering().draw(pages.to(), x, y, words, style).width + 12.0;
    }
}

/// The per-seat figure of the chosen pair with the worst verdict, and of those the one that most
/// seats miss: what the plan's colours are best spent on.
const study::Figure* telling_seat_figure(const ReportInput& in) {
    const study::Figure* best = nullptr;
    long best_count = 0;
    for (const study::Figure& figure : in.study.figures) {
        if (figure.definition->axis() != study::Axis::seat) continue;
        if (figure.worst == study::Verdict::no_limit) continue;
        if (figure.projector && *figure.projector != in.projector) continue;
        if (figure.format && *figure.format != in.format) continue;
        const long count = std::count(figure.verdicts.begin(), figure.verdicts.end(), figure.worst);
        if (best &&
            (figure.worst < best->worst || (figure.worst == best->worst && count <= best_count)))
            continue;
        best = &figure;
        best_count = count;
    }
    return best;
}

}  // namespace

void draw_drawing_page(Pages& pages,
                       const ReportInput& in,
                       const drawing::Drawing& drawing,
                       const std::string& legend,
                       const study::Figure* figure) {
    const auto fit = fit_of(drawing, pages.content());
    pages.chapter(drawing.title, fit && fit->landscape);
    draw_legend(pages, legend, figure);
    if (!fit) {
        pages.gap(16.0);
        pages.paragraph("The room is too large for a drawing to scale on this sheet.",
                        pages.body());
        return;
    }
    const Box page = pages.content();
    const Box box{page.x, page.y + kAbove_pt, page.width, page.height - kAbove_pt - kBelow_pt};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(drawing, {box, points_per_metre(fit->scale)});
    draw_scale_bar(pages, fit->scale, in.units());
    draw_scale_note(pages, fit->scale, sheet_for(in.units()).name);
}

drawing::DrawingChoice chosen_drawing(const ReportInput& in) {
    drawing::DrawingChoice choice;
    if (in.projector >= 0) choice.projector = in.projector;
    if (in.format >= 0) choice.format = in.format;
    choice.units = in.units();
    return choice;
}

void draw_plan_page(Pages& pages, const ReportInput& in) {
    drawing::DrawingChoice choice = chosen_drawing(in);
    choice.seat_figure = telling_seat_figure(in);
    const auto& seating = in.study.layout().seating;
    const bool balcony = std::any_of(seating.begin(), seating.end(),
                                     [](const room::SeatBlock& block) { return block.raised; });
    std::string legend = chosen_text(in);
    if (choice.seat_figure) {
        const std::string of = figure_of(in.study, *choice.seat_figure);
        legend = "Seats by: " + std::string(choice.seat_figure->definition->label) +
                 (of.empty() ? "" : ", " + of) + "   ·   beam of " + legend;
    }
    legend += "\nring: reference seat   ·   dashed: wheelchair place";
    if (!balcony)
        return draw_drawing_page(pages, in, drawing::plan(in.study, choice), legend,
                                 choice.seat_figure);
    // A balcony would hide what lies under it: each level has a sheet of its own.
    for (const bool raised : {false, true}) {
        choice.raised = raised;
        draw_drawing_page(pages, in, drawing::plan(in.study, choice), legend, choice.seat_figure);
    }
}

void draw_section_page(Pages& pages, const ReportInput& in) {
    draw_drawing_page(
        pages, in, drawing::long_section(in.study, chosen_drawing(in)),
        chosen_text(in) + "   ·   on the centre line, sight lines to the picture's lower edge",
        nullptr);
}

}  // namespace rakeline::report
