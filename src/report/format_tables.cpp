// SPDX-License-Identifier: MIT
#include "report/format_tables.hpp"

#include "report/figure_words.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::Figure;

/// The figures that share a line: one definition, one projector; by format.
struct Line {
    const Figure* first = nullptr;
    std::vector<const Figure*> by_format;
};

std::vector<Line> lines_of(const ReportInput& in, const Figures& figures) {
    const std::size_t formats = in.study.layout().formats.size();
    std::vector<Line> lines;
    for (const Figure* figure : figures) {
        const bool same = !lines.empty() && lines.back().first->definition == figure->definition &&
                          lines.back().first->projector == figure->projector;
        if (!same) lines.push_back({figure, std::vector<const Figure*>(formats)});
        lines.back().by_format.at(static_cast<std::size_t>(*figure->format)) = figure;
    }
    return lines;
}

study::Verdict worst_of(const Line& line, std::size_t from, std::size_t to) {
    study::Verdict worst = study::Verdict::no_limit;
    for (std::size_t f = from; f < to; ++f)
        if (line.by_format[f]) worst = std::max(worst, line.by_format[f]->worst);
    return worst;
}

std::string projector_of(const ReportInput& in, const Line& line) {
    if (!line.first->projector) return {};
    return in.study.layout().projectors.at(static_cast<std::size_t>(*line.first->projector)).name;
}

TableCell format_cell(Pages& pages, const ReportInput& in, const Figure* figure) {
    if (!figure) return {"–", pages.theme().quiet};
    TableCell cell = value_cell(pages, in, *figure, figure->values.front().si, figure->worst);
    if (figure->worst == study::Verdict::missed) cell.text = "✗ " + cell.text;
    return cell;
}

void draw_formats(Pages& pages,
                  const ReportInput& in,
                  const std::vector<Line>& lines,
                  std::size_t from,
                  std::size_t to) {
    std::vector<Column> columns = {{"figure", 112, Anchor::left}, {"of", 74, Anchor::left, true}};
    for (std::size_t f = from; f < to; ++f)
        columns.push_back({in.study.layout().formats[f].name, 48, Anchor::right});
    columns.push_back({"", 34, Anchor::left, true});
    columns.push_back({"limit", 104, Anchor::left, true});
    columns.push_back({"", 14, Anchor::centre});
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Line& line = lines[i];
        const bool goes_on = i > 0 && lines[i - 1].first->definition == line.first->definition;
        TableRow row{{{goes_on ? "" : line.first->definition->label}, {projector_of(in, line)}},
                     !goes_on};
        for (std::size_t f = from; f < to; ++f)
            row.cells.push_back(format_cell(pages, in, line.by_format[f]));
        row.cells.push_back({unit_of(in, *line.first, line.first->values.front().si)});
        row.cells.push_back({limits_text(in.study, *line.first, in.units())});
        row.cells.push_back(mark_cell(pages, worst_of(line, from, to)));
        rows.push_back(std::move(row));
    }
    draw_table(pages, columns, rows);
}

}  // namespace

void draw_format_values(Pages& pages, const ReportInput& in, const Figures& figures) {
    if (figures.empty()) return;
    const std::vector<Line> lines = lines_of(in, figures);
    const std::size_t formats = in.study.layout().formats.size();
    for (std::size_t from = 0; from < formats; from += kFormatsATable)
        draw_formats(pages, in, lines, from, std::min(from + kFormatsATable, formats));
}

}  // namespace rakeline::report
