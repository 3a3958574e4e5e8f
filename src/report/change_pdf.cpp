// SPDX-License-Identifier: MIT
#include "report/change_page.hpp"
#include "report/document.hpp"

namespace rakeline::report {
namespace {

/// What the page is about and, at the right, whose room it is.
void draw_masthead(Pages& pages, const ReportInput& in, const std::string& title) {
    const Box box = pages.content();
    const std::string& room = in.study.layout().name;
    TextStyle quiet = pages.quiet(11.0);
    quiet.anchor = drawing::Anchor::right;
    const double width = pages.lettering().measured(room, quiet).width;
    pages.lettering().draw(pages.to(), box.right(), pages.y() + 6.0, room, quiet);
    TextStyle style = pages.strong(18.0);
    style.wrap_pt = box.width - width - 20.0;
    style.ellipsis = true;
    pages.gap(pages.lettering().draw(pages.to(), box.x, pages.y(), title, style).height + 8.0);
}

/// Begins a page for each part but the first, whose page is there.
class Book {
public:
    Book(Pages& pages, const ReportInput& in) : pages_(pages), in_(in) {}

    void page(const std::string& title) {
        if (!first_) pages_.new_page(true);
        first_ = false;
        draw_masthead(pages_, in_, title);
    }

private:
    Pages& pages_;
    const ReportInput& in_;
    bool first_ = true;
};

}  // namespace

base::Result<std::string> change_pdf(const study::Study& study,
                                     const study::ChangeBook& book,
                                     const ReportOptions& options) {
    const ReportInput in{study, options, -1, -1};
    const auto draw = [&](Pages& pages) {
        Book parts(pages, in);
        for (const study::ChangeSheet& sheet : book.sheets) {
            const std::string name = projector_name(in, sheet.projector);
            parts.page(name + ": format change sheet");
            draw_change_sheet(pages, in, sheet);
            for (const auto& pair : paired_lists(book, sheet.projector)) {
                parts.page(name + ": format change");
                draw_move_lists(pages, in, pair);
            }
        }
        if (book.machines) {
            parts.page(format_name(in, book.machines->format) + " on two machines");
            draw_machines(pages, in, *book.machines);
        }
    };
    return pdf_document({.title = study.layout().name + ", format changes",
                         .subject = "Format change sheets of a cinema room",
                         .running_head = study.layout().name + " · format changes",
                         .foot = document_foot(study, options),
                         .landscape = true},
                        options, draw);
}

}  // namespace rakeline::report
