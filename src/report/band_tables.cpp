// SPDX-License-Identifier: MIT
#include "report/band_tables.hpp"

#include "report/figure_words.hpp"

#include <algorithm>
#include <set>
#include <span>

namespace rakeline::report {
namespace {

using drawing::Anchor;
using study::Figure;

constexpr std::size_t kBandsATable = 9;

double frequency_at(const Figure& figure, int index) {
    const auto i = static_cast<std::size_t>(index);
    return figure.definition->third_octaves ? sound::kThirds.at(i) : sound::kOctaves.at(i);
}

/// The limits of some figures of one definition, each once, in the order of the limit set.
std::set<int> limits_of(std::span<const Figure* const> figures) {
    std::set<int> limits;
    for (const Figure* figure : figures)
        limits.insert(figure->limits.begin(), figure->limits.end());
    return limits;
}

const room::Limit& limit_at(const ReportInput& in, int index) {
    return in.study.brief->limits.limits.at(static_cast<std::size_t>(index));
}

/// Bounds of one scope on one band, short: "≤ 3.0".
std::string band_limit(const ReportInput& in,
                       std::span<const Figure* const> figures,
                       room::LimitScope scope,
                       int band) {
    std::string text;
    for (const int i : limits_of(figures)) {
        const room::Limit& limit = limit_at(in, i);
        if (limit.scope != scope) continue;
        if (limit.band_hz && *limit.band_hz != frequency_at(*figures[0], band)) continue;
        const auto bound = [&](const char* sign, double si) {
            text += (text.empty() ? "" : " ") + std::string(sign) + " " +
                    base::quantity(si, figures[0]->definition->unit, in.units()).number;
        };
        if (limit.least) bound("≥", *limit.least);
        if (limit.most) bound("≤", *limit.most);
    }
    return text.empty() ? "–" : text;
}

/// A line of limits for each scope that any of them has.
std::vector<TableRow> band_limits(const Pages& pages,
                                  const ReportInput& in,
                                  std::span<const Figure* const> figures,
                                  std::span<const study::Value> bands) {
    std::set<room::LimitScope> scopes;
    for (const int i : limits_of(figures))
        scopes.insert(limit_at(in, i).scope);
    std::vector<TableRow> rows;
    for (const room::LimitScope scope : scopes) {
        TableRow row{{{"limit" + std::string(scope_words(scope)), pages.theme().quiet}}};
        for (const study::Value& band : bands)
            row.cells.push_back({band_limit(in, figures, scope, band.index), pages.theme().quiet});
        rows.push_back(std::move(row));
    }
    return rows;
}

/// Some neighbouring bands of one definition: a line a figure, and the limits under them.
void draw_some_bands(Pages& pages,
                     const ReportInput& in,
                     std::span<const Figure* const> figures,
                     std::span<const study::Value> bands) {
    std::vector<Column> columns = {{"", 88, Anchor::left}};
    for (const study::Value& band : bands)
        columns.push_back({place_name(in.study, *figures[0], band.index), 46, Anchor::right});
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
    for (TableRow& limits : band_limits(pages, in, figures, bands))
        rows.push_back(std::move(limits));
    // Tables under each other keep their columns under each other.
    const double spare = 46.0 * static_cast<double>(kBandsATable - bands.size());
    if (spare > 0.0) {
        columns.push_back({"", spare, Anchor::left});
        for (TableRow& row : rows)
            row.cells.resize(columns.size());
    }
    draw_table(pages, columns, rows);
}

bool same_but_band(const Figure& a, const Figure& b) {
    return a.definition == b.definition && a.projector == b.projector && a.format == b.format &&
           a.loudspeaker == b.loudspeaker;
}

std::string of_without_band(const ReportInput& in, Figure figure) {
    figure.band.reset();
    return figure_of(in.study, figure);
}

}  // namespace

void draw_along_bands(Pages& pages, const ReportInput& in, const Figures& figures) {
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

}  // namespace rakeline::report
