// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "base/result.hpp"
#include "drawing/drawing.hpp"
#include "study/study.hpp"

#include <string>
#include <vector>

/// Documents from a study: one format, one file. Each function gives bytes; callers write files.
namespace rakeline::report {

struct ReportOptions {
    base::UnitSystem units = base::UnitSystem::metric;
    std::string layout_path;  ///< for the title block
    std::string date;         ///< "YYYY-MM-DD", given by the caller: nothing here reads a clock
    std::string program_version;
    /// Of a series, to set against the screen's own; none: the plot of them is left out.
    std::vector<room::SheetChoice> sheets = {};
};

/// The consultant's report: title block, plan, long section and screen to scale, one table a
/// subject, seat table, findings with limit and source, cautions, sources. Vector, fonts embedded,
/// same bytes for the same input.
base::Result<std::string> pdf_report(const study::Study& study, const ReportOptions& options);

/// One row a seat: name, row, number, place, then every per-seat figure, heads with ids and units.
std::string seat_csv(const study::Study& study);

/// A drawing as a PNG of this size, in the dark or the paper theme.
base::Result<std::string> drawing_png(
    const drawing::Drawing& drawing, int width, int height, base::UnitSystem units, bool paper);

/// An RGBA picture (rows from the top) as a PNG.
base::Result<std::string> image_png(int width, int height, const std::vector<unsigned char>& rgba);

/// The same with the scale of its luminance (drawing::luminance_scale_drawing) in its lower left
/// corner, as large as the lettering of a drawing would be.
base::Result<std::string> image_png(int width,
                                    int height,
                                    const std::vector<unsigned char>& rgba,
                                    const drawing::Drawing& scale);

/// The cautions that window, report and README show; sentences without markup.
struct Caution {
    const char* title;
    const char* text;
};
const std::vector<Caution>& cautions();

}  // namespace rakeline::report
