// SPDX-License-Identifier: MIT
#include "drawing/decay_plot.hpp"
#include "report/drawing_pages.hpp"

/// How long sound lingers in the hall.
namespace rakeline::report {
namespace {

constexpr double kHead_pt = 42.0;
constexpr const char* kWords =
    "estimated from volume, surfaces and the layout's own absorption coefficients, sound taken as "
    "spread evenly\n"
    "the recommended range joins two recommendations from memory, and is yours to set; a "
    "measurement on site goes before it\n"
    "ceilings and linings hang over people: an engineer works out their loads, the fire authority "
    "their materials";

}  // namespace

void draw_decay_page(Pages& pages, const ReportInput& in) {
    const drawing::Drawing plot = drawing::decay_plot(in.study);
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
