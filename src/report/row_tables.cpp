// SPDX-License-Identifier: MIT
#include "report/figure_words.hpp"
#include "report/table_cells.hpp"

#include <algorithm>
#include <string_view>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::Figure;

/// Short heads: the full labels stand in the table over the rows.
struct RowColumn {
    const char* id;
    const char* head;
};
constexpr RowColumn kColumns[] = {{"room.row_distance", "to screen"},
                                  {"room.row_floor", "floor"},
                                  {"room.riser", "riser"},
                                  {"room.row_eye", "eyes"},
                                  {"sight.c_value", "C, centre"},
                                  {"sight.c_value_ends", "C, ends"},
                                  {"sight.c_value_second", "C, second row"},
                                  {"sight.c_value_second_ends", "C, second row, ends"},
                                  {"sight.c_standing", "C, over standing"}};

struct Shown {
    const Figure* figure = nullptr;
    std::string head;
};

std::string head_of(const ReportInput& in, const Figure& figure) {
    const auto column = std::ranges::find_if(kColumns, [&](const RowColumn& one) {
        return std::string_view(one.id) == figure.definition->id;
    });
    const char* head = column == std::end(kColumns) ? figure.definition->label : column->head;
    return std::string(head) + "\n" + unit_of(in, figure, figure.values.front().si);
}

/// Where the rows are, then every figure of sight per row in this format.
std::vector<Shown> shown_figures(const ReportInput& in, int format) {
    std::vector<Shown> shown;
    for (const Figure& figure : in.study.figures) {
        const study::FigureDefinition& d = *figure.definition;
        if (d.axis() != study::Axis::row) continue;
        const bool place = d.subject == study::Subject::room;
        if (place || (d.subject == study::Subject::sight && figure.format == format))
            shown.push_back({&figure, head_of(in, figure)});
    }
    return shown;
}

TableCell cell_at(const Pages& pages, const ReportInput& in, const Figure& figure, int row) {
    const auto value = study::value_at(figure, row);
    if (!value) return {"–", pages.theme().quiet};
    const study::Verdict verdict = verdict_at(figure, row);
    TableCell cell = value_cell(pages, in, figure, *value, verdict);
    if (verdict == study::Verdict::missed) cell.text = "✗ " + cell.text;
    return cell;
}

void draw_rows(Pages& pages, const ReportInput& in, const std::vector<Shown>& shown) {
    constexpr double kWidth = 50.0;
    constexpr std::size_t kFullTable = std::size(kColumns);
    std::vector<Column> columns = {{"row", 40, Anchor::left}};
    for (const Shown& one : shown)
        columns.push_back({one.head, kWidth, Anchor::right});
    // Few figures stay near the row's letter: the rest of the line is left empty.
    if (shown.size() < kFullTable)
        columns.push_back({"", kWidth * static_cast<double>(kFullTable - shown.size())});
    const study::FigureDefinition& by_row = *shown.front().figure->definition;
    std::vector<TableRow> rows;
    for (int r = 0; r < static_cast<int>(in.study.seats.rows.size()); ++r) {
        TableRow row{{{study::index_name(in.study, by_row, r), {}, true}}};
        for (const Shown& one : shown)
            row.cells.push_back(cell_at(pages, in, *one.figure, r));
        row.cells.resize(columns.size());
        rows.push_back(std::move(row));
    }
    draw_table(pages, columns, rows, {.size_pt = 7.5, .pad_pt = 1.4});
}

}  // namespace

void draw_row_tables(Pages& pages, const ReportInput& in) {
    if (in.study.seats.rows.empty()) return;
    for (std::size_t f = 0; f < in.study.layout().formats.size(); ++f) {
        const std::vector<Shown> shown = shown_figures(in, static_cast<int>(f));
        if (shown.empty()) continue;
        pages.heading("Row by row, " + in.study.layout().formats[f].name);
        draw_rows(pages, in, shown);
    }
}

}  // namespace rakeline::report
