// SPDX-License-Identifier: MIT
#include "report/change_page.hpp"

#include "report/table_cells.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::SheetCell;
using study::SheetPart;

constexpr double kLargest_pt = 12.5;
constexpr double kSmallest_pt = 6.0;

TableCell shown_cell(const Pages& pages, const ReportInput& in, const SheetCell& cell) {
    if (cell.empty()) return {"–", pages.theme().quiet, false};
    const std::string mark = study::verdict_mark(cell.verdict);
    TableCell out{cell.text(in.units()) + (mark.empty() ? "" : "  " + mark), {}, true};
    if (cell.verdict == study::Verdict::near || cell.verdict == study::Verdict::missed)
        out.colour = verdict_colour(pages.theme(), cell.verdict);
    return out;
}

/// Part of a sheet: its columns from one format to another.
struct Span {
    std::size_t from = 0;
    std::size_t to = 0;
};

std::vector<Column> columns_of(const ReportInput& in, const study::ChangeSheet& sheet, Span span) {
    std::vector<Column> columns = {{"", 4, Anchor::left, true}};
    for (std::size_t f = span.from; f < span.to; ++f)
        columns.push_back({format_name(in, sheet.formats[f]), 4, Anchor::left});
    // Few formats keep near their labels.
    for (std::size_t f = span.to - span.from; f < 3; ++f)
        columns.push_back({"", 4, Anchor::left});
    return columns;
}

std::vector<TableRow> rows_of(const Pages& pages,
                              const ReportInput& in,
                              const study::ChangeSheet& sheet,
                              Span span) {
    std::vector<TableRow> rows;
    const std::size_t count = columns_of(in, sheet, span).size();
    std::optional<SheetPart> part;
    for (const study::SheetRow& row : sheet.rows) {
        if (part != row.part) {
            rows.push_back({{{row.part == SheetPart::set ? "To set" : "What it gives",
                              pages.theme().text, true}}});
            rows.back().cells.resize(count);
        }
        part = row.part;
        rows.push_back({{{row.label}}});
        for (std::size_t f = span.from; f < span.to; ++f)
            rows.back().cells.push_back(shown_cell(pages, in, row.cells[f]));
        rows.back().cells.resize(count);
    }
    return rows;
}

TableType type_at(double size_pt) {
    return {.size_pt = size_pt,
            .pad_pt = 0.22 * size_pt,
            .head_pt = 1.5 * size_pt,
            .strong_head = true};
}

/// The largest type at which the table fits on what is left of the page.
TableType fitting_type(Pages& pages,
                       const std::vector<Column>& columns,
                       const std::vector<TableRow>& rows,
                       double below_pt) {
    double size = kLargest_pt;
    while (size > kSmallest_pt &&
           table_height(pages, columns, rows, type_at(size)) + below_pt > pages.left_of_page())
        size -= 0.25;
    return type_at(size);
}

std::string not_made_words(const ReportInput& in, const study::ChangeSheet& sheet) {
    std::string names;
    for (const int f : sheet.not_made)
        names += (names.empty() ? "" : ", ") + format_name(in, f);
    return names.empty() ? "" : "No use for " + names + ".";
}

std::vector<std::string> words_below(const ReportInput& in, const study::ChangeSheet& sheet) {
    std::vector<std::string> words = sheet.notes;
    const std::string not_made = not_made_words(in, sheet);
    if (!not_made.empty()) words.push_back(not_made);
    return words;
}

void draw_span(Pages& pages, const ReportInput& in, const study::ChangeSheet& sheet, Span span) {
    const std::vector<Column> columns = columns_of(in, sheet, span);
    const std::vector<TableRow> rows = rows_of(pages, in, sheet, span);
    const std::vector<std::string> below = words_below(in, sheet);
    const double below_pt = 10.0 + 13.0 * static_cast<double>(below.size());
    draw_table(pages, columns, rows, fitting_type(pages, columns, rows, below_pt));
    for (const std::string& words : below)
        pages.paragraph(words, pages.quiet(9.0));
}

}  // namespace

void draw_change_sheet(Pages& pages, const ReportInput& in, const study::ChangeSheet& sheet) {
    if (sheet.formats.empty()) pages.paragraph("It has a use for no format.", pages.body());
    for (std::size_t from = 0; from < sheet.formats.size(); from += kFormatsAPage) {
        if (from > 0) pages.new_page(true);
        draw_span(pages, in, sheet, {from, std::min(from + kFormatsAPage, sheet.formats.size())});
    }
}

void draw_machines(Pages& pages, const ReportInput& in, const study::MachineChange& change) {
    const std::vector<Column> columns = {
        {"", 5, Anchor::left, true},
        {projector_name(in, change.from.projector), 4, Anchor::left},
        {projector_name(in, change.to.projector), 4, Anchor::left},
        {"difference", 3, Anchor::left, true}};
    std::vector<TableRow> rows;
    for (const study::MachineRow& row : change.rows) {
        rows.push_back({{{row.label},
                         shown_cell(pages, in, row.from),
                         shown_cell(pages, in, row.to),
                         {row.difference(in.units())}}});
    }
    draw_table(pages, columns, rows, fitting_type(pages, columns, rows, 96.0));
    for (const study::MachineSide* side : {&change.from, &change.to}) {
        const std::string& name = projector_name(in, side->projector);
        if (!side->proposal.empty())
            pages.paragraph(name + " has no use for it; " + side->proposal + ".", pages.body());
        if (!side->lens(in.units()).empty())
            pages.paragraph(name + ": " + side->lens(in.units()), pages.body());
    }
}

void draw_change_chapters(Pages& pages, const ReportInput& in) {
    for (int p = 0; p < static_cast<int>(in.study.layout().projectors.size()); ++p) {
        pages.chapter(projector_name(in, p) + ": format change sheet", true);
        draw_change_sheet(pages, in, study::change_sheet(in.study, p));
    }
}

}  // namespace rakeline::report
