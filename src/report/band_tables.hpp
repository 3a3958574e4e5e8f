// SPDX-License-Identifier: MIT
#pragma once

#include "report/table_cells.hpp"

namespace rakeline::report {

/// Values along bands, nine a table: screen loss by third octaves, level spread by octaves; a line
/// a figure, and the limits under them.
void draw_along_bands(Pages& pages, const ReportInput& in, const Figures& figures);

/// Per-seat figures that there is one of for each band: three lines a loudspeaker, least, median
/// and greatest seat, one column a band.
void draw_seat_bands(Pages& pages, const ReportInput& in, const Figures& figures);

}  // namespace rakeline::report
