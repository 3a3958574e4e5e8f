// SPDX-License-Identifier: MIT
#pragma once

#include "report/table_cells.hpp"

namespace rakeline::report {

/// Figures with one value a loudspeaker: a line a loudspeaker, a column a figure, a few columns a
/// table, with the limits below; loudspeakers without any are left out.
void draw_loudspeaker_values(Pages& pages, const ReportInput& in, const Figures& figures);

}  // namespace rakeline::report
