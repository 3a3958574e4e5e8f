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

/// Draws from the pen down. Left-set cells wrap; others stay on one line.
void draw_table(Pages& pages,
                const std::vector<Column>& columns,
                const std::vector<TableRow>& rows,
                double size_pt = type::kTable);

}  // namespace rakeline::report
