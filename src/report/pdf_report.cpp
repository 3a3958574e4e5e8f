// SPDX-License-Identifier: MIT
#include "report/chapters.hpp"
#include "report/document.hpp"

namespace rakeline::report {
namespace {

void draw_all(Pages& pages, const ReportInput& in) {
    draw_title_page(pages, in);
    draw_plan_page(pages, in);
    draw_section_page(pages, in);
    draw_contour_pages(pages, in);
    draw_port_pages(pages, in);
    draw_screen_pages(pages, in);
    draw_curve_page(pages, in);
    draw_loss_page(pages, in);
    draw_sheet_page(pages, in);
    draw_decay_page(pages, in);
    draw_seat_view_pages(pages, in);
    draw_plate_pages(pages, in);
    draw_change_chapters(pages, in);
    draw_subject_tables(pages, in);
    draw_seat_table(pages, in);
    draw_cautions(pages);
    draw_definitions(pages, in);
}

}  // namespace

std::string chosen_text(const ReportInput& in) {
    std::string text;
    const room::Layout& layout = in.study.layout();
    if (in.projector >= 0) text = layout.projectors.at(static_cast<std::size_t>(in.projector)).name;
    if (in.format < 0) return text;
    const std::string& format = layout.formats.at(static_cast<std::size_t>(in.format)).name;
    return text.empty() ? format : text + " · " + format;
}

base::Result<std::string> pdf_report(const study::Study& study, const ReportOptions& options) {
    const ReportInput in{study, options, study.layout().projectors.empty() ? -1 : 0,
                         study.layout().formats.empty() ? -1 : 0};
    return pdf_document({.title = study.layout().name + ", room study",
                         .subject = "Cinema room held against " + study.brief->limits.name,
                         .running_head = study.layout().name + " · room study",
                         .foot = document_foot(study, options)},
                        options, [&](Pages& pages) { draw_all(pages, in); });
}

}  // namespace rakeline::report
