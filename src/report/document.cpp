// SPDX-License-Identifier: MIT
#include "report/document.hpp"

#include <cairo-pdf.h>

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

void set_metadata(cairo_surface_t* pdf, const DocumentWords& words, const ReportOptions& options) {
    const auto set = [pdf](cairo_pdf_metadata_t key, const std::string& text) {
        cairo_pdf_surface_set_metadata(pdf, key, text.c_str());
    };
    set(CAIRO_PDF_METADATA_TITLE, words.title);
    set(CAIRO_PDF_METADATA_SUBJECT, words.subject);
    set(CAIRO_PDF_METADATA_CREATOR, "Rakeline " + options.program_version);
    // Left unset, the library would write the time of day and no two runs would agree.
    set(CAIRO_PDF_METADATA_CREATE_DATE, options.date + "T00:00:00Z");
    set(CAIRO_PDF_METADATA_MOD_DATE, options.date + "T00:00:00Z");
}

struct Rendered {
    std::string bytes;
    int pages = 0;
    cairo_status_t status = CAIRO_STATUS_SUCCESS;
};

/// What both passes are given.
struct Job {
    const DocumentWords& words;
    const ReportOptions& options;
    const Lettering& lettering;
    const std::function<void(Pages&)>& draw;
};

Rendered render(const Job& job, int total) {
    Rendered out;
    const Sheet sheet = sheet_for(job.options.units);
    const Surface pdf(
        cairo_pdf_surface_create_for_stream(append_bytes, &out.bytes, sheet.width, sheet.height));
    set_metadata(pdf.get(), job.words, job.options);
    Pages pages(pdf.get(), {.lettering = job.lettering,
                            .theme = page_theme(),
                            .sheet = sheet,
                            .running_head = job.words.running_head,
                            .foot = job.words.foot,
                            .total = total,
                            .landscape = job.words.landscape});
    job.draw(pages);
    pages.finish();
    out.pages = pages.count();
    cairo_surface_finish(pdf.get());
    out.status = cairo_surface_status(pdf.get());
    return out;
}

}  // namespace

std::string document_foot(const study::Study& study, const ReportOptions& options) {
    return "Rakeline " + options.program_version + " · " + options.date + " · " +
           study.brief->limits.name;
}

base::Result<std::string> pdf_document(const DocumentWords& words,
                                       const ReportOptions& options,
                                       const std::function<void(Pages&)>& draw) {
    if (!is_date(options.date))
        return base::Problem{.file = {},
                             .line = 0,
                             .where = "date",
                             .what = "'" + options.date + "' is no date for a report",
                             .mend = "give it as YYYY-MM-DD"};
    const auto lettering = Lettering::open();
    if (!lettering) return lettering.problems();
    const Job job{words, options, *lettering, draw};
    Rendered document = render(job, render(job, 0).pages);
    if (document.status != CAIRO_STATUS_SUCCESS)
        return cairo_problem("the document could not be written", document.status);
    return std::move(document.bytes);
}

}  // namespace rakeline::report
