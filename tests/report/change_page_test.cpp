// SPDX-License-Identifier: MIT
#include "report/change_page.hpp"

#include "drawing/studied_room.hpp"
#include "report/pdf_file.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

std::string bytes_of(const study::Study& study,
                     const study::ChangeBook& book,
                     base::UnitSystem units = base::UnitSystem::metric) {
    const auto pdf = report::change_pdf(study, book, options(units));
    if (!pdf) FAIL(base::text(pdf.problems()));
    return *pdf;
}

}  // namespace

TEST_SUITE("report/change_page") {
    TEST_CASE("the print form has every cell, move and caution of every demo room") {
        for (const char* name : kDemoRooms) {
            for (const auto units : {base::UnitSystem::metric, base::UnitSystem::imperial}) {
                const study::Study& study = studied(name);
                const study::ChangeBook book = study::change_book(study);
                const TemporaryPdf pdf(bytes_of(study, book, units));
                const std::string text = packed(pdf.asked("pdftotext", "-"));
                const auto shows = [&](const std::string& words) {
                    INFO(name, ": ", words);
                    CHECK(text.find(packed(words)) != std::string::npos);
                };
                shows(study.layout().name);
                shows("2026-11-24");
                for (const study::ChangeSheet& sheet : book.sheets)
                    for (const study::SheetRow& row : sheet.rows)
                        for (const study::SheetCell& cell : row.cells)
                            shows(cell.text(units));
                for (const study::ListedMoves& list : book.lists) {
                    for (const study::Move& move : list.moves) {
                        shows(move.text(units));
                        shows(move.caution);
                    }
                }
                if (!book.lists.empty()) shows(study::kMovesDefer);
            }
        }
    }

    TEST_CASE("a page is a sheet, or a change and its way back; all lie on their side") {
        const study::Study& study = studied("grand-620");
        const study::ChangeBook book = study::change_book(study);
        const TemporaryPdf pdf(bytes_of(study, book));
        // Three machines; 3 x 2/2 and 4 x 3/2 pairs of formats, the 70 mm machine shows one.
        CHECK(page_count(pdf) == 3 + 3 + 6);
        CHECK(pdf.asked("pdfinfo").find("841.89 x 595.276") != std::string::npos);
        const TemporaryPdf letter(bytes_of(study, book, base::UnitSystem::imperial));
        CHECK(letter.asked("pdfinfo").find("792 x 612") != std::string::npos);
    }

    TEST_CASE("two machines stand side by side, with what was proposed and why") {
        const study::Study& study = studied("grand-620");
        study::ChangeBook book;
        book.machines = study::machine_change(study, 1, 2, 1);
        const TemporaryPdf pdf(bytes_of(study, book));
        CHECK(page_count(pdf) == 1);
        const std::string text = packed(pdf.asked("pdftotext", "-"));
        CHECK(text.find(packed("1.85 on two machines")) != std::string::npos);
        CHECK(text.find(packed(book.machines->to.proposal)) != std::string::npos);
        for (const study::MachineRow& row : book.machines->rows)
            CHECK(text.find(packed(row.from.metric)) != std::string::npos);
    }

    TEST_CASE("more formats than a page takes go on on the next, none is lost") {
        auto brief = std::make_shared<room::Brief>(*demo_brief("screening-24"));
        for (int i = 0; i < 9; ++i) {
            room::Format format = brief->layout.formats.front();
            format.name = "Show " + std::to_string(i);
            brief->layout.formats.push_back(format);
            room::FormatUse use = brief->layout.projectors.front().formats.front();
            use.format = format.name;
            brief->layout.projectors.front().formats.push_back(use);
        }
        const study::Study study = study::compute_study(brief);
        study::ChangeBook book;
        book.sheets = {study::change_sheet(study, 0)};
        const TemporaryPdf pdf(bytes_of(study, book));
        CHECK(page_count(pdf) == 3);  // 2 + 9 formats, five a page
        const std::string text = packed(pdf.asked("pdftotext", "-"));
        for (const room::Format& format : study.layout().formats)
            CHECK(text.find(packed(format.name)) != std::string::npos);
    }

    TEST_CASE("the consultant's report has a sheet for each projector") {
        const study::Study& study = studied("converted-hall-96");
        const auto bytes = report::pdf_report(study, options());
        REQUIRE(bytes);
        const std::string text = packed(TemporaryPdf(*bytes).asked("pdftotext", "-"));
        for (const room::Projector& projector : study.layout().projectors)
            CHECK(text.find(packed(projector.name + ": format change sheet")) != std::string::npos);
    }

    TEST_CASE("refuses: a date that is none") {
        const study::Study& study = studied("screening-24");
        report::ReportOptions with = options();
        with.date = "soon";
        CHECK_FALSE(report::change_pdf(study, study::change_book(study), with));
    }
}
