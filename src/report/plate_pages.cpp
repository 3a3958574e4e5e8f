// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "report/chapters.hpp"
#include "report/plate_sheet.hpp"
#include "report/table.hpp"
#include "study/gate_plate.hpp"

#include <algorithm>
#include <array>

namespace rakeline::report {
namespace {

using base::Unit;
using drawing::Anchor;
using drawing::Drawing;

constexpr double kPointsPerMm = 72.0 / 25.4;
constexpr double kBar_mm = 20.0;
constexpr double kGap_pt = 14.0;

/// One film projector in one of its formats: its plate, or why there is none.
struct PlateUse {
    std::string name;
    base::Result<picture::Plate> plate;
    drawing::DrawingChoice choice;
};

int format_index(const room::Layout& layout, const std::string& name) {
    const auto found = std::find_if(layout.formats.begin(), layout.formats.end(),
                                    [&](const room::Format& f) { return f.name == name; });
    return static_cast<int>(found - layout.formats.begin());
}

std::vector<PlateUse> plate_uses(const ReportInput& in) {
    const room::Layout& layout = in.study.layout();
    std::vector<PlateUse> uses;
    for (std::size_t p = 0; p < layout.projectors.size(); ++p) {
        const room::Projector& projector = layout.projectors[p];
        if (projector.kind != room::SourceKind::film) continue;
        for (const room::FormatUse& use : projector.formats) {
            drawing::DrawingChoice choice;
            choice.projector = static_cast<int>(p);
            choice.format = format_index(layout, use.format);
            choice.units = in.units();
            uses.push_back({projector.name + " · " + use.format,
                            study::gate_plate(in.study, *choice.projector, *choice.format),
                            choice});
        }
    }
    return uses;
}

/// The plate's lines as seen from the lamp; with or without the dimensions and words inside it.
Drawing plate_drawing(const ReportInput& in, const PlateUse& use, bool dimensions) {
    drawing::DrawingChoice choice = use.choice;
    choice.dimensions = dimensions;
    Drawing face = *drawing::plate_face(in.study, choice, picture::PlateView::from_lamp);
    // At true size a thick line is a sizeable part of what is filed.
    for (drawing::Item& item : face.items)
        if (auto* line = std::get_if<drawing::Line>(&item)) line->weight = drawing::Weight::helper;
    return face;
}

/// A bar to lay a ruler on: a sheet that was fitted to the paper is no longer true.
void draw_bar(Pages& pages, double x, double y) {
    const double length = kBar_mm * kPointsPerMm;
    const Rgb ink = pages.theme().text;
    cairo_move_to(pages.to(), x, y);
    cairo_line_to(pages.to(), x + length, y);
    for (const double end : {x, x + length}) {
        cairo_move_to(pages.to(), end, y - 3.0);
        cairo_line_to(pages.to(), end, y + 3.0);
    }
    cairo_set_dash(pages.to(), nullptr, 0, 0.0);
    cairo_set_line_width(pages.to(), 0.5);
    cairo_set_source_rgb(pages.to(), ink.r, ink.g, ink.b);
    cairo_stroke(pages.to());
    TextStyle style = pages.quiet(type::kSmall);
    style.anchor = Anchor::centre;
    pages.lettering().draw(pages.to(), x + 0.5 * length, y + 3.0, "20 mm on paper", style);
}

/// A gate's length: read to a hundredth of a millimetre, given to a thousandth.
std::string gate_length(const ReportInput& in, double metres) {
    return base::quantity_text(metres, Unit::millimetre, in.units(), 2);
}

std::string use_words(const ReportInput& in, const picture::Plate& plate) {
    const PlateBox box = plate_box({.plate = plate, .room = {}, .projector = {}, .format = {}});
    const glm::dvec2 size = 1e-3 * box.size_mm();
    return "Opening over all " + gate_length(in, size.x) + " wide, " + gate_length(in, size.y) +
           " high; aperture (dashed) " + gate_length(in, plate.aperture_m.x) + " by " +
           gate_length(in, plate.aperture_m.y) +
           ".\nLeft standing all round for the last fit: " + gate_length(in, plate.allowance_m) +
           ". Corner radius on the screen: " +
           in.quantity(plate.corner_radius_m, Unit::millimetre) + ".";
}

/// Height on paper that a true-size block takes, without its heading.
double true_size_height(const picture::Plate& plate) {
    return std::max(kPointsPerMm * 1e3 * plate.aperture_m.y + 8.0, 66.0);
}

/// The drawing at 1:1 at the left, the bar and the words beside it.
void draw_true_size(Pages& pages, const ReportInput& in, const PlateUse& use) {
    const double height = true_size_height(*use.plate);
    pages.make_room(height + 64.0);
    pages.heading(use.name);
    const Box page = pages.content();
    const Drawing face = plate_drawing(in, use, false);
    const double width = points_per_metre(1.0) * (face.high.x - face.low.x);
    const Box box{page.x, pages.y(), width, height};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(face, {box, points_per_metre(1.0)});
    const double x = box.right() + kGap_pt;
    draw_bar(pages, x, pages.y() + 6.0);
    TextStyle style = pages.body();
    style.wrap_pt = page.right() - x;
    pages.lettering().draw(pages.to(), x, pages.y() + 24.0, use_words(in, *use.plate), style);
    pages.gap(height + 6.0);
}

void draw_refused(Pages& pages, const PlateUse& use) {
    pages.heading(use.name);
    const base::Problem& why = use.plate.problems().front();
    pages.paragraph("No plate to file: " + why.what + ".", pages.body());
    pages.paragraph("What would help: " + why.mend + ".", pages.quiet());
}

/// The sheet's own strip between running head and page number, where a drawing may stand that the
/// margins would cut.
Box drawing_strip(const Pages& pages) {
    constexpr double kInto_pt = 14.0, kRight_pt = 24.0;
    const Box page = pages.content();
    return {page.x, page.y - kInto_pt, page.width + kRight_pt, page.height + 2.0 * kInto_pt - 3.0};
}

constexpr double kWords_pt = 84.0;  ///< column of words beside an enlarged plate, at least

/// The largest whole enlargement up to ten that leaves room for the words.
int enlargement_for(const Drawing& face, const Box& strip) {
    const glm::dvec2 size = points_per_metre(1.0) * (face.high - face.low);
    int times = 10;
    while (times > 1 && (times * size.x > strip.width - kWords_pt || times * size.y > strip.height))
        --times;
    return times;
}

/// Words and numbers that run down a narrow column.
class WordColumn {
public:
    WordColumn(Pages& pages, const Box& box) : pages_(pages), box_(box), y_(box.y) {}

    void text(const std::string& words, TextStyle style, double gap_pt = 5.0) {
        style.wrap_pt = box_.width;
        y_ += pages_.lettering().draw(pages_.to(), box_.x, y_, words, style).height + gap_pt;
    }
    /// A name at the left, two numbers set right.
    void row(const std::array<std::string, 3>& cells, TextStyle style) {
        pages_.lettering().draw(pages_.to(), box_.x, y_, cells[0], style);
        style.anchor = Anchor::right;
        pages_.lettering().draw(pages_.to(), box_.x + 0.66 * box_.width, y_, cells[1], style);
        y_ += pages_.lettering().draw(pages_.to(), box_.right(), y_, cells[2], style).height + 2.0;
    }
    void bar() {
        draw_bar(pages_, box_.x, y_ + 5.0);
        y_ += 24.0;
    }

private:
    Pages& pages_;
    Box box_;
    double y_;
};

using Point = std::array<std::string, 3>;

/// Number, right and up of the aperture's centre as seen from the lamp.
std::vector<Point> points_of(const ReportInput& in, const picture::Plate& plate) {
    std::vector<Point> points;
    for (const glm::dvec2 p : picture::outline_seen(plate, picture::PlateView::from_lamp)) {
        const auto number = [&](double metres) {
            return base::quantity(metres, Unit::millimetre, in.units(), 2).number;
        };
        points.push_back({std::to_string(points.size() + 1), number(p.x), number(p.y)});
    }
    return points;
}

std::string unit_name(const ReportInput& in) {
    return base::quantity(0.0, Unit::millimetre, in.units()).unit;
}

constexpr std::size_t kPointsBeside = 24;  ///< as many as stand in the column

void draw_words(WordColumn& column, Pages& pages, const ReportInput& in, const PlateUse& use) {
    column.text(plate_view_words(picture::PlateView::from_lamp), pages.body());
    column.text(use_words(in, *use.plate), pages.quiet());
    column.text(
        "File from the lamp side, with the machine off and the lamp cold. A burr scratches "
        "film (common practice, no source).",
        pages.strong(type::kTable));
    column.bar();
    const auto points = points_of(in, *use.plate);
    if (points.size() > kPointsBeside) {
        column.text(
            "The outline's " + std::to_string(points.size()) + " points stand on the next sheet.",
            pages.quiet());
        return;
    }
    column.text("Points of the outline, " + unit_name(in) + " from the aperture's centre",
                pages.quiet(type::kSmall), 3.0);
    column.row({"", "right", "up"}, pages.quiet(type::kSmall));
    for (const Point& point : points)
        column.row(point, pages.body());
}

/// Marks the points that the column numbers.
void number_points(Pages& pages, const picture::Plate& plate, const Box& box, double scale) {
    const auto outline = picture::outline_seen(plate, picture::PlateView::from_lamp);
    if (outline.size() > kPointsBeside) return;
    const double points = points_per_metre(1.0 / scale);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const glm::dvec2 out = 7.0 * glm::normalize(outline[i]);
        TextStyle style = pages.body();
        style.anchor = Anchor::centre;
        pages.lettering().draw(pages.to(), box.x + 0.5 * box.width + points * outline[i].x - out.x,
                               box.y + 0.5 * box.height - points * outline[i].y + out.y - 5.0,
                               std::to_string(i + 1), style);
    }
}

void draw_enlarged(Pages& pages, const ReportInput& in, const PlateUse& use) {
    const Drawing face = plate_drawing(in, use, true);
    pages.new_page(true);
    const Box strip = drawing_strip(pages);
    const int times = enlargement_for(face, strip);
    const double scale = static_cast<double>(times);
    const double width = points_per_metre(1.0 / scale) * (face.high.x - face.low.x);
    const Box box{strip.right() - width, strip.y, width, strip.height};
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(face, {box, points_per_metre(1.0 / scale)});
    number_points(pages, *use.plate, box, scale);
    const double room = std::min(box.x - strip.x - kGap_pt, 190.0);
    WordColumn column(pages, {strip.x, strip.y + 2.0, room, strip.height});
    column.text(use.name, pages.strong(type::kHeading), 1.0);
    column.text("gate plate at " + std::to_string(times) + ":1", pages.strong());
    if (times < 10) column.text("Ten times does not fit this sheet.", pages.quiet(type::kSmall));
    draw_words(column, pages, in, use);
}

/// The points of a long outline, four of them a line.
void draw_points(Pages& pages, const ReportInput& in, const PlateUse& use) {
    constexpr std::size_t kAcross = 4;
    const auto points = points_of(in, *use.plate);
    if (points.size() <= kPointsBeside) return;
    pages.new_page(false);
    pages.heading(use.name +
                  ", points of the outline as seen from the lamp: right and up of the "
                  "aperture's centre, " +
                  unit_name(in));
    std::vector<Column> columns;
    for (std::size_t c = 0; c < kAcross; ++c) {
        columns.push_back({"point", 20, Anchor::left, true});
        columns.push_back({"right", 34, Anchor::right});
        columns.push_back({"up", 34, Anchor::right});
    }
    const std::size_t lines = (points.size() + kAcross - 1) / kAcross;
    std::vector<TableRow> rows(lines);
    for (std::size_t i = 0; i < lines * kAcross; ++i)
        for (std::size_t k = 0; k < 3; ++k)
            rows[i % lines].cells.push_back({i < points.size() ? points[i][k] : ""});
    draw_table(pages, columns, rows);
}

void draw_intro(Pages& pages) {
    pages.paragraph(
        "The opening to file in each film gate's plate, so that the light on the screen is the "
        "masked opening and nothing else, at true size and on the sheets behind enlarged. " +
            plate_view_words(picture::PlateView::from_lamp),
        pages.body());
    pages.gap(4.0);
    const auto& all = cautions();
    const auto caution = std::find_if(all.begin(), all.end(), [](const Caution& c) {
        return std::string_view(c.title) == "Filing a gate plate";
    });
    pages.paragraph(std::string("Caution. ") + caution->text, pages.strong(type::kBody));
    pages.gap(4.0);
    pages.paragraph(
        "Print at full size, without fitting to the page: the bar must measure 20 mm. Lay the "
        "plate on the true-size drawing to mark it out; compare on the enlarged one.",
        pages.quiet());
}

}  // namespace

void draw_plate_pages(Pages& pages, const ReportInput& in) {
    const std::vector<PlateUse> uses = plate_uses(in);
    if (uses.empty()) return;
    pages.chapter("Gate plates");
    draw_intro(pages);
    for (const PlateUse& use : uses)
        use.plate ? draw_true_size(pages, in, use) : draw_refused(pages, use);
    for (const PlateUse& use : uses) {
        if (!use.plate) continue;
        draw_enlarged(pages, in, use);
        draw_points(pages, in, use);
    }
}

}  // namespace rakeline::report
