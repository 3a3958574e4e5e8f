// SPDX-License-Identifier: MIT
#include "report/loudspeaker_tables.hpp"

#include "report/figure_words.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::Figure;

constexpr std::size_t kColumnsATable = 7;

/// The figures of one definition, by loudspeaker; null where it has none.
struct ByLoudspeaker {
    const Figure* first = nullptr;
    std::vector<const Figure*> figures;
};

std::vector<ByLoudspeaker> gathered(const ReportInput& in, const Figures& figures) {
    std::vector<ByLoudspeaker> out;
    for (const Figure* figure : figures) {
        if (out.empty() || out.back().first->definition != figure->definition)
            out.push_back(
                {figure, std::vector<const Figure*>(in.study.layout().loudspeakers.size())});
        out.back().figures.at(static_cast<std::size_t>(*figure->loudspeaker)) = figure;
    }
    return out;
}

TableCell cell_of(Pages& pages, const ReportInput& in, const Figure* figure) {
    if (!figure) return {"–", pages.theme().quiet};
    const double si = figure->values.front().si;
    TableCell cell = value_cell(pages, in, *figure, si, figure->worst);
    if (figure->worst == study::Verdict::missed) cell.text = "✗ " + cell.text;
    return cell;
}

/// "Amplifier headroom at least 0.0 dB (screen channels)", of the first loudspeaker that has any;
/// empty where none has.
std::string limits_of(const ReportInput& in, const ByLoudspeaker& column) {
    for (const Figure* figure : column.figures)
        if (figure && !figure->limits.empty())
            return std::string(figure->definition->label) + " " +
                   limits_text(in.study, *figure, in.units());
    return {};
}

void draw_columns(Pages& pages,
                  const ReportInput& in,
                  const std::vector<ByLoudspeaker>& all,
                  std::size_t from,
                  std::size_t to) {
    std::vector<Column> columns = {{"loudspeaker", 86, Anchor::left}};
    std::string limits;
    for (std::size_t i = from; i < to; ++i) {
        const Figure& first = *all[i].first;
        const std::string unit = unit_of(in, first, first.values.front().si);
        columns.push_back({std::string(first.definition->label) + (unit.empty() ? "" : ", " + unit),
                           58, Anchor::right});
        const std::string limit = limits_of(in, all[i]);
        if (!limit.empty()) limits += (limits.empty() ? "Limits: " : "; ") + limit;
    }
    // Few figures stay near the loudspeaker's name: the rest of the line is left empty.
    const double spare = 58.0 * static_cast<double>(kColumnsATable - (to - from));
    if (spare > 0.0) columns.push_back({"", spare, Anchor::left});
    std::vector<TableRow> rows;
    const auto& loudspeakers = in.study.layout().loudspeakers;
    for (std::size_t l = 0; l < loudspeakers.size(); ++l) {
        const bool any =
            std::any_of(all.begin() + static_cast<long>(from), all.begin() + static_cast<long>(to),
                        [l](const ByLoudspeaker& column) { return column.figures[l] != nullptr; });
        if (!any) continue;
        TableRow row{{{loudspeakers[l].name}}};
        for (std::size_t i = from; i < to; ++i)
            row.cells.push_back(cell_of(pages, in, all[i].figures[l]));
        row.cells.resize(columns.size());
        rows.push_back(std::move(row));
    }
    draw_table(pages, columns, rows);
    if (limits.empty()) return;
    pages.paragraph(limits + ".", pages.quiet());
    pages.gap(4.0);
}

}  // namespace

void draw_loudspeaker_values(Pages& pages, const ReportInput& in, const Figures& figures) {
    if (figures.empty()) return;
    pages.heading("Loudspeaker by loudspeaker");
    const std::vector<ByLoudspeaker> all = gathered(in, figures);
    for (std::size_t from = 0; from < all.size(); from += kColumnsATable)
        draw_columns(pages, in, all, from, std::min(from + kColumnsATable, all.size()));
}

}  // namespace rakeline::report
