// SPDX-License-Identifier: MIT
#include "drawing/loss_plot.hpp"
#include "report/drawing_pages.hpp"

/// What the screen takes of the sound, over frequency.
namespace rakeline::report {
namespace {

constexpr double kHead_pt = 30.0;
constexpr double kPlot_pt = 280.0;
constexpr double kPitch_pt = 13.0;  ///< between lines of the drawings' lettering
constexpr const char* kWords =
    "a model of viscous holes in a limp sheet, or its measured loss; the gap as plane waves "
    "between "
    "sheet and baffle\n"
    "the boost is one to start from: what a meter reads in the room goes first, and high levels "
    "harm "
    "hearing";

}  // namespace

void draw_loss_page(Pages& pages, const ReportInput& in) {
    // On a tall page the charts stand higher than in a wide window.
    const drawing::PlotShape shape =
        drawing::loss_plot_shape({pages.content().width, kPlot_pt}, kPitch_pt);
    const drawing::Drawing plot = drawing::loss_plot(in.study, {}, in.units(), shape);
    const glm::dvec2 size = plot.high - plot.low;
    const double height = pages.content().width * size.y / size.x;
    pages.chapter(plot.title);
    pages.lettering().draw(pages.to(), pages.content().x, pages.y() - 4.0, kWords, pages.quiet());
    pages.gap(kHead_pt);
    const Box box{pages.content().x, pages.y(), pages.content().width, height};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units()).paint(plot, fitted(plot, box));
    pages.gap(height);
}

}  // namespace rakeline::report
