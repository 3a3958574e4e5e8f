// SPDX-License-Identifier: MIT
#pragma once

#include "report/pages.hpp"

#include <optional>
#include <string>
#include <vector>

/// Tables that run over pages: hairlines, the head repeated on each page, numbers set right.
namespace rakeline::report {

struct Column {
    std::string head;
    double width = 1.0;  ///< share of the table's width
    drawing::Anchor anchor = drawing::Anchor::left;
    bool quiet = false;  ///< cells in quiet text: units, limits
};

struct TableCell {
    std::string text;
    std::optional<Rgb> colour{};
    bool medium = false;
};

struct TableRow {
    std::vector<TableCell> cells;
    bool ruled = true;  ///< a hairline above it: off where a row goes on with the one before
};

struct TableType {
    double size_pt = type::kTable;
    double pad_pt = 2.4;  ///< above and below the text of each row
    double head_pt = type::kSmall;
    bool strong_head = false;  ///< heads that are read from afar
};

/// Draws from the pen down. Left-set cells wrap; others stay on one line. Rows that go on with the
/// one before (not ruled) stay on a page with it, up to kKeptTogether_pt of them. A table that runs
/// over takes at least kLeastOver_pt of rows to its last page, and one of less than twice that does
/// not run over.
inline constexpr double kKeptTogether_pt = 120.0;
inline constexpr double kLeastOver_pt = 90.0;
void draw_table(Pages& pages,
                const std::vector<Column>& columns,
                const std::vector<TableRow>& rows,
                const TableType& type = {});

/// Height that draw_table takes where nothing breaks to another page.
double table_height(Pages& pages,
                    const std::vector<Column>& columns,
                    const std::vector<TableRow>& rows,
                    const TableType& type = {});

}  // namespace rakeline::report
