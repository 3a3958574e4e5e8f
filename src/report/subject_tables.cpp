// SPDX-License-Identifier: MIT
#include "report/chapters.hpp"
#include "report/figure_words.hpp"
#include "report/table.hpp"

#include <algorithm>
#include <span>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::Axis;
using study::Figure;
using Figures = std::vector<const Figure*>;

Figures figures_where(const ReportInput& in, study::Subject subject, const auto& wanted) {
    Figures found;
    for (const Figure& figure : in.study.figures)
        if (figure.definition->subject == subject && !figure.values.empty() && wanted(figure))
            found.push_back(&figure);
    return found;
}

TableCell mark_cell(const Pages& pages, study::Verdict verdict) {
    if (verdict == study::Verdict::no_limit) return {};
    return {verdict_mark(verdict), verdict_colour(pages.theme(), verdict), true};
}

/// A value in the colour of its verdict; calm where it holds.
TableCell value_cell(const Pages& pages,
                     const ReportInput& in,
                     const Figure& figure,
                     double si,
                     study::Verdict verdict) {
    TableCell cell{base::quantity(si, figure.definition->unit, in.units()).number, {}, false};
    if (verdict == study::Verdict::missed || verdict == study::Verdict::near) {
        cell.colour = verdict_colour(pages.theme(), verdict);
        cell.medium = true;
    }
    return cell;
}

study::Verdict verdict_at(const Figure& figure, int index) {
    for (std::size_t i = 0; i < figure.values.size() && i < figure.verdicts.size(); ++i)
        if (figure.values[i].index == index) return figure.verdicts[i];
    return study::Verdict::no_limit;
}

/// Unit as printed beside the number; Hz turns into kHz by value.
std::string unit_of(const ReportInput& in, const Figure& figure, double si) {
    return base::quantity(si, figure.definition->unit, in.units()).unit;
}

bool same_definition(const Figures& figures, std::size_t i) {
    return i > 0 && figures[i]->definition == figures[i - 1]->definition;
}

std::string label_at(const Figures& figures, std::size_t i) {
    return same_definition(figures, i) ? "" : figures[i]->definition->label;
}

void draw_single_values(Pages& pages, const ReportInput& in, const Figures& figures) {
    if (figures.empty()) return;
    const std::vector<Column> columns = {
        {"figure", 150, Anchor::left},      {"of", 120, Anchor::left, true},
        {"value", 58, Anchor::right},       {"", 34, Anchor::left, true},
        {"limit", 118, Anchor::left, true}, {"", 16, Anchor::centre}};
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const Figure& figure = *figures[i];
        const double si = figure.values.front().si;
        rows.push_back({{{label_at(figures, i)},
                         {figure_of(in.study, figure)},
                         value_cell(pages, in, figure, si, figure.worst),
                         {unit_of(in, figure, si)},
                         {limits_text(in.study, figure, in.units())},
                         mark_cell(pages, figure.worst)},
                        !same_definition(figures, i)});
    }
    draw_table(pages, columns, rows);
}

/// Least, median and greatest over seats or rows, with the name of each.
void draw_spreads(Pages& pages,
                  const ReportInput& in,
                  const Figures& figures,
                  const std::string& title) {
    if (figures.empty()) return;
    pages.heading(title);
    const std::vector<Column> columns = {
        {"figure", 100, Anchor::left},     {"of", 88, Anchor::left, true},
        {"least", 40, Anchor::right},      {"at", 34, Anchor::left, true},
        {"median", 40, Anchor::right},     {"greatest", 42, Anchor::right},
        {"at", 34, Anchor::left, true},    {"", 30, Anchor::left, true},
        {"limit", 82, Anchor::left, true}, {"", 14, Anchor::centre}};
    std::vector<TableRow> rows;
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const Figure& figure = *figures[i];
        const Spread spread = *spread_of(figure);
        const auto cell = [&](const study::Value& value) {
            return value_cell(pages, in, figure, value.si, verdict_at(figure, value.index));
        };
        const auto name = [&](const study::Value& value) {
            return TableCell{study::index_name(in.study, *figure.definition, value.index)};
        };
        rows.push_back({{{label_at(figures, i)},
                         {figure_of(in.study, figure)},
                         cell(spread.least),
                         name(spread.least),
                         cell(spread.median),
                         cell(spread.greatest),
                         name(spread.greatest),
                         {unit_of(in, figure, spread.greatest.si)},
                         {limits_text(in.study, figure, in.units())},
                         mark_cell(pages, figure.worst)},
                        !same_definition(figures, i)});
    }
    draw_table(pages, columns, rows);
}

/// One line a row of seats, one column a figure, a few columns a table.
void draw_by_row(Pages& pages, const ReportInput& in, const Figures& figures) {
    constexpr std::size_t kColumnsATable = 7;
    for (std::size_t first = 0; first < figures.size(); first += kColumnsATable) {
        const std::size_t last = std::min(first + kColumnsATable, figures.size());
        if (first == 0) pages.heading("Row by row");
        std::vector<Column> columns = {{"row", 30, Anchor::left}};
        for (std::size_t f = first; f < last; ++f) {
            const Figure& figure = *figures[f];
            const std::string unit = unit_of(in, figure, figure.values.front().si);
            const std::string of = figure_of(in.study, figure);
            columns.push_back({std::string(figure.definition->label) +
                                   (of.empty() ? "" : ", " + of) +
                                   (unit.empty() ? "" : ", " + unit),
                               62, Anchor::right});
        }
        // Few figures stay near the row's letter: the rest of the line is left empty.
        const double spare = 62.0 * static_cast<double>(kColumnsATable - (last - first));
        if (spare > 0.0) columns.push_back({"", spare, Anchor::left});
        std::vector<TableRow> rows;
        for (std::size_t r = 0; r < in.study.seats.rows.size(); ++r) {
            const int index = static_cast<int>(r);
            TableRow row{{{in.study.seats.rows[r].letter, {}, true}}};
            for (std::size_t f = first; f < last; ++f) {
                const auto value = study::value_at(*figures[f], index);
                const study::Verdict verdict = verdict_at(*figures[f], index);
                TableCell cell = value ? value_cell(pages, in, *figures[f], *value, verdict)
                                       : TableCell{"–", pages.theme().quiet};
                if (verdict == study::Verdict::missed) cell.text = "✗ " + cell.text;
                row.cells.push_back(std::move(cell));
            }
            row.cells.resize(columns.size());
            rows.push_back(std::move(row));
        }
        draw_table(pages, columns, rows);
    }
}

double frequency_at(const Figure& figure, int index) {
    const auto i = static_cast<std::size_t>(index);
    return figure.definition->third_octaves ? sound::kThirds.at(i) : sound::kOctaves.at(i);
}

/// Bounds on one band of a figure, short: "≤ 3.0".
std::string band_limit(const ReportInput& in, const Figure& figure, int index) {
    std::string text;
    for (const int i : figure.limits) {
        const room::Limit& limit = in.study.brief->limits.limits.at(static_cast<std::size_t>(i));
        if (limit.band_hz && *limit.band_hz != frequency_at(figure, index)) continue;
        const auto bound = [&](const char* sign, double si) {
            text += (text.empty() ? "" : " ") + std::string(sign) + " " +
                    base::quantity(si, figure.definition->unit, in.units()).number;
        };
        if (limit.least) bound("≥", *limit.least);
        if (limit.most) bound("≤", *limit.most);
    }
    return text.empty() ? "–" : text;
}

/// Some neighbouring bands of one definition: a line a figure, and the limits under them.
void draw_some_bands(Pages& pages,
                     const ReportInput& in,
                     std::span<const Figure* const> figures,
                     std::span<const study::Value> bands) {
    std::vector<Column> columns = {{"", 88, Anchor::left}};
    TableRow limits{{{"limit", pages.theme().quiet}}};
    for (const study::Value& band : bands) {
        columns.push_back({place_name(in.study, *figures[0], band.index), 46, Anchor::right});
        limits.cells.push_back({band_limit(in, *figures[0], band.index), pages.theme().quiet});
    }
    std::vector<TableRow> rows;
    for (const Figure* figure : figures) {
        TableRow row{{{figure_of(in.study, *figure)}}};
        for (const study::Value& band : bands) {
            const auto value = study::value_at(*figure, band.index);
            const study::Verdict verdict = verdict_at(*figure, band.index);
            row.cells.push_back(value ? value_cell(pages, in, *figure, *value, verdict)
                                      : TableCell{"–", pages.theme().quiet});
        }
        rows.push_back(std::move(row));
    }
    rows.push_back(std::move(limits));
    draw_table(pages, columns, rows);
}

/// Values along bands, nine a table: screen loss by third octaves, level spread by octaves.
void draw_along_bands(Pages& pages, const ReportInput& in, const Figures& figures) {
    constexpr std::size_t kBandsATable = 9;
    for (std::size_t i = 0; i < figures.size();) {
        std::size_t end = i + 1;
        while (end < figures.size() && same_definition(figures, end))
            ++end;
        const std::span<const Figure* const> same(&figures[i], end - i);
        const std::span<const study::Value> bands(same[0]->values);
        const std::string unit = unit_of(in, *same[0], 0.0);
        pages.heading(std::string(same[0]->definition->label) + (unit.empty() ? "" : ", " + unit));
        for (std::size_t first = 0; first < bands.size(); first += kBandsATable)
            draw_some_bands(pages, in, same,
                            bands.subspan(first, std::min(kBandsATable, bands.size() - first)));
        i = end;
    }
}

bool same_but_band(const Figure& a, const Figure& b) {
    return a.definition == b.definition && a.projector == b.projector && a.format == b.format &&
           a.loudspeaker == b.loudspeaker;
}

std::string of_without_band(const ReportInput& in, Figure figure) {
    figure.band.reset();
    return figure_of(in.study, figure);
}

/// Per-seat figures that there is one of for each band: three lines a loudspeaker, least, median
/// and greatest seat, one column a band.
void draw_seat_bands(Pages& pages, const ReportInput& in, const Figures& figures) {
    std::vector<TableRow> rows;
    std::vector<Column> columns = {{"of", 88, Anchor::left},
                                   {"over the seats", 50, Anchor::left, true}};
    for (const double frequency : sound::kOctaves)
        columns.push_back({band_text(frequency), 38, Anchor::right});
    columns.push_back({"", 16, Anchor::centre});
    const char* const kNames[] = {"least", "median", "greatest"};
    for (std::size_t i = 0; i < figures.size();) {
        std::size_t end = i;
        study::Verdict worst = study::Verdict::no_limit;
        for (; end < figures.size() && same_but_band(*figures[i], *figures[end]); ++end)
            worst = std::max(worst, figures[end]->worst);
        for (int line = 0; line < 3; ++line) {
            TableRow row{{{line == 0 ? of_without_band(in, *figures[i]) : ""}, {kNames[line]}},
                         line == 0};
            row.cells.resize(columns.size());
            for (std::size_t f = i; f < end; ++f) {
                const Spread spread = *spread_of(*figures[f]);
                const study::Value values[] = {spread.least, spread.median, spread.greatest};
                row.cells.at(2 + static_cast<std::size_t>(*figures[f]->band)) =
                    value_cell(pages, in, *figures[f], values[line].si,
                               verdict_at(*figures[f], values[line].index));
            }
            if (line == 0) row.cells.back() = mark_cell(pages, worst);
            rows.push_back(std::move(row));
        }
        const bool done =
            end == figures.size() || figures[end]->definition != figures[i]->definition;
        if (done) {
            pages.heading(std::string(figures[i]->definition->label) + ", " +
                          unit_of(in, *figures[i], 0.0));
            draw_table(pages, columns, rows);
            rows.clear();
        }
        i = end;
    }
}

void draw_subject(Pages& pages, const ReportInput& in, study::Subject subject) {
    const auto on = [&](Axis axis, bool banded) {
        return figures_where(in, subject, [axis, banded](const Figure& figure) {
            return figure.definition->axis() == axis && figure.band.has_value() == banded;
        });
    };
    pages.chapter(study::subject_title(subject));
    draw_single_values(pages, in, on(Axis::none, false));
    draw_spreads(pages, in, on(Axis::seat, false), "Over the seats");
    draw_spreads(pages, in, on(Axis::row, false), "Over the rows");
    draw_along_bands(pages, in, on(Axis::band, false));
    draw_seat_bands(pages, in, on(Axis::seat, true));
    draw_by_row(pages, in, on(Axis::row, false));
}

}  // namespace

void draw_subject_tables(Pages& pages, const ReportInput& in) {
    for (const study::Subject subject : study::kSubjects)
        draw_subject(pages, in, subject);
}

}  // namespace rakeline::report
