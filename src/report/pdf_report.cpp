// SPDX-License-Identifier: MIT
#include "report/chapters.hpp"

#include <cairo-pdf.h>

#include <algorithm>

namespace rakeline::report {
namespace {

/// "YYYY-MM-DD": what the document's own date is set from.
bool is_date(const std::string& text) {
    constexpr std::string_view kShape = "dddd-dd-dd";
    if (text.size() != kShape.size()) return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool digit = text[i] >= '0' && text[i] <= '9';
        if (kShape[i] == 'd' ? !digit : text[i] != '-') return false;
    }
    return true;
}

void set_metadata(cairo_surface_t* pdf, const ReportInput& in) {
    const auto set = [pdf](cairo_pdf_metadata_t key, const std::string& text) {
        cairo_pdf_surface_set_metadata(pdf, key, text.c_str());
    };
    set(CAIRO_PDF_METADATA_TITLE, in.study.layout().name + ", room study");
    set(CAIRO_PDF_METADATA_SUBJECT, "Cinema room held against " + in.study.brief->limits.name);
    set(CAIRO_PDF_METADATA_CREATOR, "Rakeline " + in.options.program_version);
    // Left unset, the library would write the time of day and no two runs would agree.
    set(CAIRO_PDF_METADATA_CREATE_DATE, in.options.date + "T00:00:00Z");
    set(CAIRO_PDF_METADATA_MOD_DATE, in.options.date + "T00:00:00Z");
}

void draw_all(Pages& pages, const ReportInput& in) {
    draw_title_page(pages, in);
    draw_plan_page(pages, in);
    draw_section_page(pages, in);
    draw_screen_pages(pages, in);
    draw_plate_pages(pages, in);
    draw_subject_tables(pages, in);
    draw_seat_table(pages, in);
    draw_cautions(pages);
    draw_definitions(pages, in);
    pages.finish();
}

struct Rendered {
    std::string bytes;
    int pages = 0;
    cairo_status_t status = CAIRO_STATUS_SUCCESS;
};

Rendered render(const ReportInput& in, const Lettering& lettering, int total) {
    Rendered out;
    const Sheet sheet = sheet_for(in.units());
    const Surface pdf(
        cairo_pdf_surface_create_for_stream(append_bytes, &out.bytes, sheet.width, sheet.height));
    set_metadata(pdf.get(), in);
    Pages pages(pdf.get(), {.lettering = lettering,
                            .theme = page_theme(),
                            .sheet = sheet,
                            .running_head = in.study.layout().name + " · room study",
                            .foot = "Rakeline " + in.options.program_version + " · " +
                                    in.options.date + " · " + in.study.brief->limits.name,
                            .total = total});
    draw_all(pages, in);
    out.pages = pages.count();
    cairo_surface_finish(pdf.get());
    out.status = cairo_surface_status(pdf.get());
    return out;
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
    if (!is_date(options.date))
        return base::Problem{.file = {},
                             .line = 0,
                             .where = "date",
                             .what = "'" + options.date + "' is no date for a report",
                             .mend = "give it as YYYY-MM-DD"};
    const auto lettering = Lettering::open();
    if (!lettering) return lettering.problems();
    const ReportInput in{study, options, study.layout().projectors.empty() ? -1 : 0,
                         study.layout().formats.empty() ? -1 : 0};
    // The first pass counts the pages, so that the second can say "3 / 9".
    const int total = render(in, *lettering, 0).pages;
    Rendered report = render(in, *lettering, total);
    if (report.status != CAIRO_STATUS_SUCCESS)
        return cairo_problem("the report could not be written", report.status);
    return std::move(report.bytes);
}

}  // namespace rakeline::report
