// SPDX-License-Identifier: MIT
#include "report/chapters.hpp"
#include "report/figure_words.hpp"
#include "report/table.hpp"

namespace rakeline::report {
namespace {

using base::Unit;

std::string counted(std::size_t count, const char* one, const char* many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

template <class List>
std::string names(const List& list) {
    std::string text;
    for (const auto& item : list)
        text += (text.empty() ? "" : " · ") + item.name;
    return text.empty() ? "none" : text;
}

void draw_masthead(Pages& pages, const ReportInput& in) {
    const room::Layout& layout = in.study.layout();
    const Box box = pages.content();
    pages.lettering().draw(pages.to(), box.x, pages.y(), "Room study", pages.quiet(9.0));
    pages.gap(14.0);
    TextStyle title = pages.strong(type::kTitle);
    title.wrap_pt = box.width;
    pages.paragraph(layout.name, title);
    pages.gap(4.0);
    if (!layout.note.empty()) pages.paragraph(layout.note, pages.quiet(9.0));
    pages.gap(12.0);
}

std::string hall_text(const ReportInput& in) {
    const room::Hall& hall = in.study.layout().hall;
    std::string text = in.quantity(hall.width_m, Unit::metre) + " wide, " +
                       in.quantity(hall.length_m, Unit::metre) + " long, " +
                       in.quantity(hall.height_m, Unit::metre) + " high";
    if (hall.splay_rad != 0.0)
        text += ", side walls splayed by " + in.quantity(hall.splay_rad, Unit::radian);
    return text;
}

std::string screen_text(const ReportInput& in) {
    const room::Screen& screen = in.study.layout().screen;
    std::string text = in.quantity(screen.width_m, Unit::metre) + " × " +
                       in.quantity(screen.height_m, Unit::metre) + ", " + screen.surface.name;
    if (screen.radius_m > 0.0)
        text += ", curved to a radius of " + in.quantity(screen.radius_m, Unit::metre);
    if (screen.tilt_rad != 0.0) text += ", tilted by " + in.quantity(screen.tilt_rad, Unit::radian);
    return text;
}

std::string seats_text(const ReportInput& in) {
    const room::SeatPlan& plan = in.study.seats;
    std::size_t wheelchair = 0;
    for (const room::Seat& seat : plan.seats)
        wheelchair += seat.wheelchair ? 1 : 0;
    std::string text = counted(plan.seats.size(), "seat", "seats") + " in " +
                       counted(plan.rows.size(), "row", "rows");
    if (wheelchair > 0)
        text +=
            ", " + counted(wheelchair, "of them a wheelchair place", "of them wheelchair places");
    return text;
}

void draw_facts(Pages& pages, const ReportInput& in) {
    const room::Layout& layout = in.study.layout();
    const std::pair<const char*, std::string> facts[] = {
        {"Layout file", in.options.layout_path.empty() ? "not saved" : in.options.layout_path},
        {"Date", in.options.date},
        {"Held against", in.study.brief->limits.name},
        {"Hall", hall_text(in)},
        {"Screen", screen_text(in)},
        {"Seats", seats_text(in)},
        {"Formats", names(layout.formats)},
        {"Projectors", names(layout.projectors)},
    };
    const double indent = 92.0;
    for (const auto& [name, text] : facts) {
        pages.rule(0.4);
        pages.gap(3.5);
        pages.lettering().draw(pages.to(), pages.content().x, pages.y(), name, pages.quiet());
        pages.paragraph(text, pages.body(), indent);
        pages.gap(3.5);
    }
    pages.rule(0.4);
}

std::string count_or_dash(int count) {
    return count == 0 ? "–" : std::to_string(count);
}

void draw_verdicts(Pages& pages, const ReportInput& in) {
    pages.heading("Verdict by subject");
    using drawing::Anchor;
    const std::vector<Column> columns = {
        {"", 5, Anchor::left},           {"subject", 35, Anchor::left},
        {"✓ holds", 14, Anchor::right},  {"△ near", 14, Anchor::right},
        {"✗ missed", 14, Anchor::right}, {"without limit", 18, Anchor::right, true}};
    std::vector<TableRow> rows;
    for (const study::Subject subject : study::kSubjects) {
        const study::Verdict worst = study::subject_verdict(in.study, subject);
        const Tally counts = tally(in.study, subject);
        const Theme& theme = pages.theme();
        const auto missed = counts.missed > 0 ? std::optional(theme.missed) : std::nullopt;
        const auto near = counts.near > 0 ? std::optional(theme.near) : std::nullopt;
        rows.push_back({{{worst == study::Verdict::no_limit ? "–" : study::verdict_mark(worst),
                          verdict_colour(theme, worst), true},
                         {study::subject_title(subject), {}, true},
                         {count_or_dash(counts.holds)},
                         {count_or_dash(counts.near), near, counts.near > 0},
                         {count_or_dash(counts.missed), missed, counts.missed > 0},
                         {count_or_dash(counts.no_limit)}}});
    }
    draw_table(pages, columns, rows, {.size_pt = type::kBody});
    pages.paragraph(
        "Counted are figures, one for each projector, format, loudspeaker or band that it is of; a "
        "figure over seats or rows counts by its worst value.",
        pages.quiet(type::kSmall));
}

/// Room for a name and a signature at the foot of the first page.
constexpr double kSignature_pt = 74.0;

void draw_signature(Pages& pages) {
    const Box box = pages.content();
    const double top = box.bottom() - kSignature_pt + 10.0;
    const double line = top + 46.0;
    const double half = 0.5 * box.width - 12.0;
    pages.lettering().draw(pages.to(), box.x, top, "Examined by", pages.strong(type::kHeading));
    for (const auto& [x, text] : {std::pair{box.x, "Consultant: name, licence"},
                                  std::pair{box.x + half + 24.0, "Signature, date"}}) {
        pages.line_across(x, line, half, pages.theme().quiet, 0.6);
        pages.lettering().draw(pages.to(), x, line + 3.0, text, pages.quiet(type::kSmall));
    }
}

double finding_height(const Pages& pages,
                      const ReportInput& in,
                      const study::Finding& finding,
                      double width) {
    const auto height = [&](const std::string& text, TextStyle style) {
        style.wrap_pt = width;
        return text.empty() ? 0.0 : pages.lettering().measured(text, style).height;
    };
    return height(finding.what_in(in.units()), pages.body()) +
           height(finding.against_in(in.units()), pages.quiet(7.3)) +
           height(finding.mend, pages.quiet(7.3)) + 10.0;
}

void draw_finding(Pages& pages, const ReportInput& in, const study::Finding& finding) {
    const double indent = 16.0;
    pages.make_room(finding_height(pages, in, finding, pages.content().width - indent));
    pages.gap(4.0);
    TextStyle mark = pages.body();
    mark.colour = verdict_colour(pages.theme(), finding.verdict);
    mark.strength = Strength::medium;
    pages.lettering().draw(pages.to(), pages.content().x, pages.y(),
                           study::verdict_mark(finding.verdict), mark);
    TextStyle what = pages.body();
    what.strength = Strength::medium;
    pages.paragraph(finding.what_in(in.units()), what, indent);
    pages.paragraph(finding.against_in(in.units()), pages.quiet(7.3), indent);
    TextStyle mend = pages.quiet(7.3);
    mend.colour = pages.theme().text;
    if (!finding.mend.empty()) pages.paragraph(finding.mend, mend, indent);
    pages.gap(5.0);
}

void draw_findings(Pages& pages, const ReportInput& in) {
    pages.heading("Findings");
    if (in.study.findings.empty())
        pages.paragraph("Every figure that has a limit holds it.", pages.body());
    for (const study::Finding& finding : in.study.findings)
        draw_finding(pages, in, finding);
}

}  // namespace

void draw_title_page(Pages& pages, const ReportInput& in) {
    draw_signature(pages);
    pages.reserve(kSignature_pt);
    draw_masthead(pages, in);
    draw_facts(pages, in);
    draw_verdicts(pages, in);
    draw_findings(pages, in);
}

}  // namespace rakeline::report
