// SPDX-License-Identifier: MIT
#include "report/drawing_pages.hpp"
#include "report/figure_words.hpp"

#include <algorithm>
#include <limits>

/// The screen unrolled flat: the first pair of projector and format on a page of its own, all
/// others small beside each other at one scale, their numbers under them.
namespace rakeline::report {
namespace {

constexpr int kColumns = 2;
constexpr double kBetween_pt = 16.0;
constexpr double kMostHigh_pt = 98.0;  ///< of a small drawing
constexpr double kHead_pt = 30.0;      ///< legend under the title
constexpr double kLines_pt = 52.0;     ///< title over a small drawing and numbers under it
constexpr const char* kColours =
    "filled: light on the masking (ochre), part of the opening left dark (red)";

struct SmallFace {
    const picture::ProjectedPicture* picture = nullptr;
    drawing::Drawing drawing;
};

std::vector<SmallFace> other_faces(const ReportInput& in) {
    std::vector<SmallFace> faces;
    for (const auto& picture : in.study.picture.pictures) {
        if (picture.projector == in.projector && picture.format == in.format) continue;
        drawing::DrawingChoice choice = chosen_drawing(in);
        choice.projector = picture.projector;
        choice.format = picture.format;
        choice.dimensions = false;
        faces.push_back({&picture, drawing::screen_face(in.study, choice)});
    }
    return faces;
}

/// "overfill 5.4 %", or nothing where the pair has no such figure.
std::string words(const ReportInput& in,
                  const picture::ProjectedPicture& picture,
                  const std::string& name,
                  const char* id) {
    study::Place place;
    place.projector = picture.projector;
    place.format = picture.format;
    const study::Figure* figure = study::find_figure(in.study, id, place);
    const auto value = figure ? study::value_at(*figure) : std::nullopt;
    if (!value) return {};
    const std::string mark = study::verdict_mark(figure->worst);
    return name + " " + in.quantity(*value, figure->definition->unit) +
           (mark.empty() ? "" : " " + mark);
}

std::string joined(const std::vector<std::string>& parts) {
    std::string line;
    for (const std::string& part : parts) {
        if (part.empty()) continue;
        line += (line.empty() ? "" : " · ") + part;
    }
    return line;
}

std::vector<std::string> numbers(const ReportInput& in, const picture::ProjectedPicture& p) {
    const auto of = [&](const char* name, const char* id) { return words(in, p, name, id); };
    return {joined({of("overfill", "picture.overfill"), of("crop", "picture.crop"),
                    of("left dark", "picture.uncovered")}),
            joined({of("keystone", "picture.keystone_vertical"),
                    of("sideways", "picture.keystone_horizontal")}),
            joined({of("past left", "picture.overfill_left"), of("right", "picture.overfill_right"),
                    of("top", "picture.overfill_top"), of("bottom", "picture.overfill_bottom")})};
}

std::string pair_name(const ReportInput& in, const picture::ProjectedPicture& picture) {
    const room::Layout& layout = in.study.layout();
    return layout.projectors.at(static_cast<std::size_t>(picture.projector)).name + " · " +
           layout.formats.at(static_cast<std::size_t>(picture.format)).name;
}

void draw_small(Pages& pages,
                const ReportInput& in,
                const SmallFace& face,
                const Box& cell,
                double points_per_m) {
    double y = cell.y;
    y += pages.lettering()
             .draw(pages.to(), cell.x, y, pair_name(in, *face.picture), pages.strong(type::kTable))
             .height;
    const double height = (face.drawing.high.y - face.drawing.low.y) * points_per_m;
    const Box box{cell.x, y, cell.width, height + 6.0};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(face.drawing, {box, points_per_m});
    y = box.bottom();
    TextStyle style = pages.quiet(type::kSmall);
    style.wrap_pt = cell.width;
    for (const std::string& line : numbers(in, *face.picture))
        y += pages.lettering().draw(pages.to(), cell.x, y, line, style).height;
}

/// The scale at which every one of them fits its place, and the height of the tallest.
struct Common {
    double points_per_m = std::numeric_limits<double>::infinity();
    double height_pt = 0.0;
};

Common common_scale(const std::vector<SmallFace>& faces, double width) {
    Common common;
    for (const SmallFace& face : faces)
        common.points_per_m =
            std::min(common.points_per_m,
                     fitted(face.drawing, {0.0, 0.0, width, kMostHigh_pt}).points_per_m);
    for (const SmallFace& face : faces)
        common.height_pt = std::max(
            common.height_pt, (face.drawing.high.y - face.drawing.low.y) * common.points_per_m);
    return common;
}

void begin_grid_page(Pages& pages) {
    pages.chapter("The screen, flat: other pictures");
    pages.lettering().draw(pages.to(), pages.content().x, pages.y() - 4.0,
                           std::string("all at one scale   ·   ") + kColours, pages.quiet());
    pages.gap(kHead_pt);
}

/// Rows from the top of a page, as many as it takes.
void draw_grid(Pages& pages, const ReportInput& in, const std::vector<SmallFace>& faces) {
    if (faces.empty()) return;
    begin_grid_page(pages);
    const Box page = pages.content();
    const double width = (page.width - (kColumns - 1) * kBetween_pt) / kColumns;
    const Common common = common_scale(faces, width);
    const double row_pt = common.height_pt + kLines_pt;
    for (std::size_t i = 0; i < faces.size(); i += kColumns) {
        if (pages.left_of_page() < row_pt) begin_grid_page(pages);
        for (std::size_t k = 0; k < kColumns && i + k < faces.size(); ++k)
            draw_small(
                pages, in, faces[i + k],
                {page.x + static_cast<double>(k) * (width + kBetween_pt), pages.y(), width, row_pt},
                common.points_per_m);
        pages.gap(row_pt + kBetween_pt);
    }
}

}  // namespace

void draw_screen_pages(Pages& pages, const ReportInput& in) {
    draw_drawing_page(pages, in, drawing::screen_face(in.study, chosen_drawing(in)),
                      chosen_text(in) + "   ·   unrolled, seen from the seats\n" + kColours,
                      nullptr);
    draw_grid(pages, in, other_faces(in));
}

}  // namespace rakeline::report
