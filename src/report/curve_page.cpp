// SPDX-License-Identifier: MIT
#include "drawing/curve_plot.hpp"
#include "report/drawing_pages.hpp"
#include "study/curve_trials.hpp"

/// What another curve or tilt of the screen would do for the light.
namespace rakeline::report {
namespace {

constexpr double kHead_pt = 30.0;
constexpr const char* kWords =
    "darkest over brightest of all seats and nine points, the worst seat's sides over its centre, "
    "and what the picture pays\n"
    "trials of screens that nobody has chosen: an engineer works out the loads of a frame that "
    "hangs over people";

}  // namespace

void draw_curve_page(Pages& pages, const ReportInput& in) {
    if (in.projector < 0 || in.format < 0) return;
    const auto help = study::curve_trials(in.study, in.projector, in.format);
    if (!help) return;
    const drawing::Drawing plot = drawing::curve_plot(*help, in.units());
    const glm::dvec2 size = plot.high - plot.low;
    const double height = pages.content().width * size.y / size.x;
    pages.chapter(plot.title + ": " + chosen_text(in));
    pages.lettering().draw(pages.to(), pages.content().x, pages.y() - 4.0, kWords, pages.quiet());
    pages.gap(kHead_pt);
    const Box box{pages.content().x, pages.y(), pages.content().width, height};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units()).paint(plot, fitted(plot, box));
    pages.gap(height);
}

}  // namespace rakeline::report
