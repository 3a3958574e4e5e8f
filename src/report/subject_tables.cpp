// SPDX-License-Identifier: MIT
#include "base/assert.hpp"
#include "report/band_tables.hpp"
#include "report/chapters.hpp"
#include "report/figure_words.hpp"
#include "report/format_tables.hpp"
#include "report/loudspeaker_tables.hpp"
#include "report/table_cells.hpp"
#include "study/crowd_words.hpp"
#include "study/width_words.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::Axis;
using study::Figure;

Figures figures_where(const ReportInput& in, study::Subject subject, const auto& wanted) {
    Figures found;
    for (const Figure& figure : in.study.figures)
        if (figure.definition->subject == subject && figure.definition->listed &&
            !figure.values.empty() && wanted(figure))
            found.push_back(&figure);
    return found;
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

/// The crowd in sentences, or that none was drawn.
void draw_crowd(Pages& pages, const ReportInput& in) {
    if (in.study.seats.seats.empty() || in.study.layout().formats.empty()) return;
    if (!in.study.crowd) {
        pages.paragraph(std::string("The chance of a clear view over random audiences was ") +
                            study::kNotSampled + ".",
                        pages.quiet());
        return;
    }
    constexpr double kBetween_pt = 3.0;
    const auto say = [&](const std::string& sentence, const TextStyle& style) {
        if (sentence.empty()) return;
        pages.paragraph(sentence, style);
        pages.gap(kBetween_pt);
    };
    for (int f = 0; f < static_cast<int>(in.study.crowd->formats.size()); ++f)
        say(study::crowd_sentence(in.study, f), pages.body());
    say(study::people_sentence(in.study), pages.quiet());
    say(study::precision_sentence(in.study), pages.quiet());
    pages.gap(2.0 * kBetween_pt);
}

/// How wide each format's picture may be.
void draw_widths(Pages& pages, const ReportInput& in) {
    constexpr double kShare = 0.9;
    if (in.study.seats.seats.empty()) return;
    pages.heading("Picture widths");
    for (int f = 0; f < static_cast<int>(in.study.layout().formats.size()); ++f) {
        const auto advice = study::width_advice(in.study, f, kShare);
        RL_ASSERT(advice);  // there are seats
        pages.paragraph(study::width_verdict(in.study, *advice, in.units()), pages.body());
        std::string reasons;
        for (const std::string& reason : study::width_reasons(in.study, *advice, in.units()))
            reasons += (reasons.empty() ? "" : " ") + reason;
        pages.paragraph(reasons, pages.quiet());
        pages.gap(3.0);
    }
    pages.paragraph(study::width_scope(in.study, in.units()), pages.quiet());
}

/// The chapter of light names lamps, currents and ducts.
void draw_light_caution(Pages& pages) {
    pages.paragraph(
        "Caution. Lamps are under pressure hot and cold; ultraviolet light, ozone, heat and high "
        "currents come with them. These figures help to plan and stand in for no maker's data: "
        "the makers' instructions, local codes and licensed practice go first. See Cautions.",
        pages.strong(type::kBody));
    pages.gap(4.0);
}

void draw_subject(Pages& pages, const ReportInput& in, study::Subject subject) {
    const auto on = [&](Axis axis, bool banded) {
        return figures_where(in, subject, [axis, banded](const Figure& figure) {
            return figure.definition->axis() == axis && figure.band.has_value() == banded;
        });
    };
    pages.chapter(study::subject_title(subject));
    if (subject == study::Subject::light) draw_light_caution(pages);
    if (subject == study::Subject::sight) draw_crowd(pages, in);
    const auto single = [&](bool by_format) {
        return figures_where(in, subject, [by_format](const Figure& figure) {
            return figure.definition->axis() == Axis::none &&
                   figure.format.has_value() == by_format && !figure.loudspeaker;
        });
    };
    draw_format_values(pages, in, single(true));
    draw_single_values(pages, in, single(false));
    draw_loudspeaker_values(pages, in, figures_where(in, subject, [](const Figure& figure) {
                                return figure.definition->axis() == Axis::none &&
                                       figure.loudspeaker.has_value();
                            }));
    draw_spreads(pages, in, on(Axis::seat, false), "Over the seats");
    draw_spreads(pages, in, on(Axis::row, false), "Over the rows");
    draw_along_bands(pages, in, on(Axis::band, false));
    draw_seat_bands(pages, in, on(Axis::seat, true));
    if (subject != study::Subject::sight) return draw_by_row(pages, in, on(Axis::row, false));
    draw_widths(pages, in);
    // Sight has its rows beside where they are, a table a format.
    draw_row_tables(pages, in);
}

}  // namespace

void draw_subject_tables(Pages& pages, const ReportInput& in) {
    for (const study::Subject subject : study::kSubjects)
        draw_subject(pages, in, subject);
}

}  // namespace rakeline::report
