// SPDX-License-Identifier: MIT
#pragma once

#include "report/chapters.hpp"

/// Private to report/: a drawing to scale on a page of its own.
namespace rakeline::report {

/// Title, legend, the drawing at the largest round scale that fits, scale bar. With a figure, the
/// marks that its values are coloured by.
void draw_drawing_page(Pages& pages,
                       const ReportInput& in,
                       const drawing::Drawing& drawing,
                       const std::string& legend,
                       const study::Figure* figure);

/// Projector, format and units of the report.
drawing::DrawingChoice chosen_drawing(const ReportInput& in);

}  // namespace rakeline::report
