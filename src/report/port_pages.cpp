// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "report/drawing_pages.hpp"

#include <array>

/// The booth wall round every port, side by side, each at a round scale.
namespace rakeline::report {
namespace {

constexpr std::size_t kColumns = 2;
constexpr double kBetween_pt = 16.0;
constexpr double kName_pt = 14.0;
constexpr double kHead_pt = 34.0;  ///< legend under the title

/// Scales that a rule of the trade reads; the last for ports that no booth has.
constexpr std::array<double, 10> kScales = {5, 10, 15, 20, 25, 50, 100, 200, 500, 1000};

struct Port {
    std::string projector;
    drawing::Drawing drawing;

    glm::dvec2 size() const { return drawing.high - drawing.low; }
};

std::vector<Port> ports_of(const ReportInput& in) {
    std::vector<Port> ports;
    const auto& projectors = in.study.layout().projectors;
    for (std::size_t p = 0; p < projectors.size(); ++p) {
        drawing::DrawingChoice choice = chosen_drawing(in);
        choice.projector = static_cast<int>(p);
        ports.push_back({projectors[p].name, drawing::port_face(in.study, choice)});
    }
    return ports;
}

/// The largest scale at which it fits into a cell.
double scale_of(const Port& port, double width, double height) {
    for (const double scale : kScales) {
        const double points = points_per_metre(scale);
        if (port.size().x * points <= width && port.size().y * points <= height) return scale;
    }
    return kScales.back();
}

void begin_page(Pages& pages) {
    pages.chapter("The ports, seen from the hall");
    pages.lettering().draw(
        pages.to(), pages.content().x, pages.y() - 4.0,
        "dashed: the smallest opening that passes all formats; round it come frame and play   ·   "
        "house left is at the right\n"
        "an opening in a booth wall that holds back fire is for its licensed designer",
        pages.quiet());
    pages.gap(kHead_pt);
}

void draw_port(Pages& pages, const ReportInput& in, const Port& port, const Box& cell) {
    const Box box{cell.x, cell.y + kName_pt, cell.width, cell.height - kName_pt};
    const double scale = scale_of(port, box.width, box.height);
    pages.lettering().draw(pages.to(), cell.x, cell.y,
                           port.projector + "   1 : " + base::fixed_text(scale, 0),
                           pages.strong(type::kTable));
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(port.drawing, {box, points_per_metre(scale)});
}

}  // namespace

void draw_port_pages(Pages& pages, const ReportInput& in) {
    const std::vector<Port> ports = ports_of(in);
    if (ports.empty()) return;
    begin_page(pages);
    const double width = (pages.content().width - (kColumns - 1) * kBetween_pt) / kColumns;
    const double height = 0.42 * pages.content().height;
    for (std::size_t i = 0; i < ports.size(); i += kColumns) {
        if (pages.left_of_page() < height) begin_page(pages);
        for (std::size_t k = 0; k < kColumns && i + k < ports.size(); ++k)
            draw_port(pages, in, ports[i + k],
                      {pages.content().x + static_cast<double>(k) * (width + kBetween_pt),
                       pages.y(), width, height});
        pages.gap(height + kBetween_pt);
    }
}

}  // namespace rakeline::report
