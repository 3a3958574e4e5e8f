// SPDX-License-Identifier: MIT
#include "report/drawing_pages.hpp"

#include <algorithm>

/// What the reference seat sees, and of each format the seat from which most is hidden.
namespace rakeline::report {
namespace {

constexpr double kHead_pt = 44.0;  ///< legend under the title
constexpr double kName_pt = 14.0;  ///< over each drawing
constexpr double kBetween_pt = 14.0;
constexpr double kShare = 0.43;  ///< of a page's height for one

struct Look {
    std::string name;
    int format = 0;
    int seat = 0;
};

std::string name_of(const ReportInput& in, const char* which, int format, int seat) {
    return in.study.layout().formats.at(static_cast<std::size_t>(format)).name + " · " + which +
           " " + in.study.seats.seats.at(static_cast<std::size_t>(seat)).name;
}

/// The first of those from which most is hidden; nothing where every seat sees all.
std::optional<int> worst_seat(const sight::FormatSight& format) {
    const auto worst =
        std::ranges::max_element(format.hidden, {}, &sight::SeatHidden::hidden_fraction);
    if (worst == format.hidden.end() || worst->hidden_fraction <= 0.0) return std::nullopt;
    return static_cast<int>(worst - format.hidden.begin());
}

std::vector<Look> looks_of(const ReportInput& in) {
    std::vector<Look> looks;
    const auto& formats = in.study.sight.formats;
    if (in.study.reference_seat && in.format >= 0) {
        const int seat = *in.study.reference_seat;
        looks.push_back({name_of(in, "reference seat", in.format, seat), in.format, seat});
    }
    for (std::size_t f = 0; f < formats.size(); ++f) {
        const int format = static_cast<int>(f);
        if (const auto seat = worst_seat(formats[f]))
            looks.push_back({name_of(in, "most hidden, seat", format, *seat), format, *seat});
    }
    return looks;
}

void begin_page(Pages& pages) {
    pages.chapter("From the seats");
    pages.lettering().draw(
        pages.to(), pages.content().x, pages.y() - 4.0,
        "hatched: hidden by heads, seat backs and balconies in a full house of equal people\n"
        "colours and lines: luminance as this seat sees it, one scale for all seats of a format\n"
        "dashed: eye level, and the height from which all is clear   ·   in perspective about the "
        "picture's centre",
        pages.quiet());
    pages.gap(kHead_pt);
}

void draw_look(Pages& pages, const ReportInput& in, const Look& look, const Box& cell) {
    drawing::DrawingChoice choice = chosen_drawing(in);
    choice.format = look.format;
    choice.seat = look.seat;
    choice.luminance = true;
    const auto drawn = drawing::seat_view(in.study, choice);
    if (!drawn) return;  // no seats or no format: then there are no looks
    const Box box{cell.x, cell.y + kName_pt, cell.width, cell.height - kName_pt};
    pages.lettering().draw(pages.to(), cell.x, cell.y, look.name, pages.strong(type::kTable));
    Canvas(pages.to(), pages.lettering(), pages.theme(), in.units())
        .paint(*drawn, fitted(*drawn, box));
}

}  // namespace

void draw_seat_view_pages(Pages& pages, const ReportInput& in) {
    const std::vector<Look> looks = looks_of(in);
    if (looks.empty()) return;
    begin_page(pages);
    const double height = kShare * pages.content().height;
    for (const Look& look : looks) {
        if (pages.left_of_page() < height) begin_page(pages);
        draw_look(pages, in, look, {pages.content().x, pages.y(), pages.content().width, height});
        pages.gap(height + kBetween_pt);
    }
}

}  // namespace rakeline::report
