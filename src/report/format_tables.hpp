// SPDX-License-Identifier: MIT
#pragma once

#include "report/table_cells.hpp"

namespace rakeline::report {

/// Single values that differ by format: a line a figure and projector, a column a format, so that
/// the formats of a machine stand side by side. At most kFormatsATable formats a table.
inline constexpr std::size_t kFormatsATable = 5;
void draw_format_values(Pages& pages, const ReportInput& in, const Figures& figures);

}  // namespace rakeline::report
