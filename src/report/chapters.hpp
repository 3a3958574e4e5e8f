// SPDX-License-Identifier: MIT
#pragma once

#include "report/pages.hpp"
#include "report/report.hpp"

/// The chapters of the consultant's report, each drawn from the pen down or on pages of its own.
namespace rakeline::report {

struct ReportInput {
    const study::Study& study;
    const ReportOptions& options;
    int projector = -1;  ///< the first of the layout, -1 if it has none
    int format = -1;

    base::UnitSystem units() const { return options.units; }
    std::string quantity(double si, base::Unit unit) const {
        return base::quantity_text(si, unit, options.units);
    }
};

void draw_title_page(Pages& pages, const ReportInput& in);  ///< with the findings
void draw_plan_page(Pages& pages, const ReportInput& in);
/// Lines of equal value over the seats, for key figures of sight and sound; nothing without seats.
void draw_contour_pages(Pages& pages, const ReportInput& in);
void draw_section_page(Pages& pages, const ReportInput& in);
void draw_port_pages(Pages& pages, const ReportInput& in);    ///< the booth wall round every port
void draw_screen_pages(Pages& pages, const ReportInput& in);  ///< the screen unrolled, pair by pair
/// Trials of the screen's curve and tilt; nothing without a picture that seats see.
void draw_curve_page(Pages& pages, const ReportInput& in);
/// How long sound lingers in the hall, over the octaves.
void draw_decay_page(Pages& pages, const ReportInput& in);
/// What the screen takes of the sound, and one channel through it, over frequency.
void draw_loss_page(Pages& pages, const ReportInput& in);
/// The screen's holes at true scale under pixels, and other sheets; nothing without holes.
void draw_sheet_page(Pages& pages, const ReportInput& in);
/// What the reference seat sees, and the seats from which most is hidden.
void draw_seat_view_pages(Pages& pages, const ReportInput& in);
/// The film gates' plates at true size and enlarged; nothing where no machine shows film.
void draw_plate_pages(Pages& pages, const ReportInput& in);
void draw_change_chapters(Pages& pages, const ReportInput& in);  ///< a sheet a projector
/// Row by row for each format: where the row is and what it sees over those in front.
void draw_row_tables(Pages& pages, const ReportInput& in);
void draw_subject_tables(Pages& pages, const ReportInput& in);
void draw_seat_table(Pages& pages, const ReportInput& in);
void draw_cautions(Pages& pages);
void draw_definitions(Pages& pages, const ReportInput& in);  ///< and the list of sources

/// "Film · 2.39": the projector and format that drawings and the seat table are of.
std::string chosen_text(const ReportInput& in);

}  // namespace rakeline::report
