// SPDX-License-Identifier: MIT
#include "drawing/studied_room.hpp"
#include "report/pdf_file.hpp"
#include "study/crowd_words.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <sstream>

using namespace rakeline;

namespace {

using tests::flowing;
using tests::options;
using tests::packed;
using tests::page_count;
using tests::report_of;
using tests::TemporaryPdf;

}  // namespace

TEST_SUITE("report/pdf_report") {
    TEST_CASE("the same study gives the same bytes, dated as the caller says") {
        const study::Study& study = tests::studied("converted-hall-96");
        const std::string a = report_of(study, options());
        CHECK(a == report_of(study, options()));
        const TemporaryPdf pdf(a);
        const std::string info = pdf.asked("env TZ=UTC pdfinfo");
        CHECK(info.find("Tue Nov 24 00:00:00 2026") != std::string::npos);
    }

    TEST_CASE("every finding's sentence, bound and mend are in the text") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = tests::studied(name);
            const TemporaryPdf pdf(report_of(study, options()));
            const std::string text = packed(pdf.asked("pdftotext", "-"));
            REQUIRE_FALSE(study.findings.empty());
            for (const study::Finding& finding : study.findings) {
                INFO(finding.what);
                CHECK(text.find(packed(finding.what)) != std::string::npos);
                CHECK(text.find(packed(finding.against)) != std::string::npos);
                CHECK(text.find(packed(finding.mend)) != std::string::npos);
            }
        }
    }

    TEST_CASE("all fonts are embedded, and they are ours alone") {
        const TemporaryPdf pdf(report_of(tests::studied("grand-620"), options()));
        std::istringstream lines(pdf.asked("pdffonts"));
        std::string line;
        std::getline(lines, line);
        const auto embedded = line.find("emb");
        REQUIRE(embedded != std::string::npos);
        std::getline(lines, line);  // a rule of dashes
        int fonts = 0;
        while (std::getline(lines, line)) {
            INFO(line);
            CHECK(line.substr(embedded, 3) == "yes");
            const bool ours =
                line.find("Inter") != std::string::npos || line.find("DejaVu") != std::string::npos;
            CHECK(ours);
            ++fonts;
        }
        CHECK(fonts >= 3);
    }

    TEST_CASE("pages are numbered to the last, and the last number is their count") {
        const TemporaryPdf pdf(report_of(tests::studied("screening-24"), options()));
        const int pages = page_count(pdf);
        CHECK(pages > 4);
        for (int page = 1; page <= pages; ++page) {
            const std::string number = std::to_string(page);
            const std::string text =
                flowing(pdf.asked("pdftotext -f " + number + " -l " + number, "-"));
            INFO("page ", page);
            CHECK(text.find(number + " / " + std::to_string(pages)) != std::string::npos);
        }
    }

    TEST_CASE("every seat has its line, every caution its sentence, every limit its source") {
        const study::Study& study = tests::studied("steep-240");
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string text = pdf.asked("pdftotext", "-layout -");
        std::istringstream lines(text);
        std::string word;
        std::vector<std::string> words;
        while (lines >> word)
            words.push_back(word);
        std::sort(words.begin(), words.end());
        for (const room::Seat& seat : study.seats.seats) {
            INFO(seat.name);
            CHECK(std::binary_search(words.begin(), words.end(), seat.name));
        }
        const std::string plain = packed(pdf.asked("pdftotext", "-"));
        for (const report::Caution& caution : report::cautions())
            CHECK(plain.find(packed(caution.text)) != std::string::npos);
        for (const study::Figure& figure : study.figures)
            for (const int limit : figure.limits) {
                const auto& source =
                    study.brief->limits.limits.at(static_cast<std::size_t>(limit)).source;
                CHECK(plain.find(packed(source)) != std::string::npos);
            }
    }

    TEST_CASE("every loudspeaker's values stand in a line, seven figures a table") {
        const study::Study& study = tests::studied("steep-240");
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string text = packed(pdf.asked("pdftotext", "-layout -"));
        std::vector<const study::FigureDefinition*> columns;
        for (const study::Figure& figure : study.figures)
            if (figure.loudspeaker && figure.definition->axis() == study::Axis::none &&
                figure.definition->listed &&
                (columns.empty() || columns.back() != figure.definition))
                columns.push_back(figure.definition);
        REQUIRE(columns.size() > 7);
        const auto& loudspeakers = study.layout().loudspeakers;
        for (std::size_t from = 0; from < columns.size(); from += 7) {
            for (std::size_t l = 0; l < loudspeakers.size(); ++l) {
                std::string line = loudspeakers[l].name;
                bool any = false;
                for (std::size_t c = from; c < std::min(from + 7, columns.size()); ++c) {
                    const study::Figure* figure = study::find_figure(
                        study, columns[c]->id, {.loudspeaker = static_cast<int>(l)});
                    any = any || figure;
                    if (!figure) {
                        line += "–";
                        continue;
                    }
                    const auto shown = base::quantity(figure->values[0].si, columns[c]->unit,
                                                      base::UnitSystem::metric);
                    line += (figure->worst == study::Verdict::missed ? "✗" : "") + shown.number;
                }
                INFO(line);
                if (any) CHECK(text.find(packed(line)) != std::string::npos);
            }
        }
    }

    TEST_CASE("single values of the tables are the study's own, as the formatter prints them") {
        const study::Study& study = tests::studied("steep-240");
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string text = packed(pdf.asked("pdftotext", "-layout -"));
        // The formats of a machine stand side by side on one line, their unit behind the last.
        std::string line;
        for (std::size_t i = 0; i < study.figures.size(); ++i) {
            const study::Figure& figure = study.figures[i];
            if (figure.definition->axis() != study::Axis::none || !figure.definition->listed ||
                figure.loudspeaker)
                continue;
            INFO(figure.definition->id);
            const auto shown = base::quantity(figure.values[0].si, figure.definition->unit,
                                              base::UnitSystem::metric);
            line +=
                (figure.format && figure.worst == study::Verdict::missed ? "✗" : "") + shown.number;
            const bool goes_on = figure.format && i + 1 < study.figures.size() &&
                                 study.figures[i + 1].definition == figure.definition &&
                                 study.figures[i + 1].projector == figure.projector;
            if (goes_on) continue;
            CHECK(text.find(packed(line + shown.unit)) != std::string::npos);
            line.clear();
        }
    }

    TEST_CASE("the crowd's sentences and chances are there, or that none was drawn") {
        const study::Study& plain = tests::studied("screening-24");
        const study::Study whole = study::with_crowd(plain, study::sample_crowd(plain));
        const TemporaryPdf with(report_of(whole, options()));
        const std::string text = packed(with.asked("pdftotext", "-"));
        for (int f = 0; f < static_cast<int>(whole.layout().formats.size()); ++f)
            CHECK(text.find(packed(study::crowd_sentence(whole, f))) != std::string::npos);
        CHECK(text.find(packed(study::people_sentence(whole))) != std::string::npos);
        CHECK(text.find("notsampled") == std::string::npos);
        const TemporaryPdf without(report_of(plain, options()));
        CHECK(packed(without.asked("pdftotext", "-")).find("notsampled") != std::string::npos);
    }

    TEST_CASE("the screen has a page of its own, and every other picture its numbers") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = tests::studied(name);
            const TemporaryPdf pdf(report_of(study, options()));
            const std::string text = flowing(pdf.asked("pdftotext", "-"));
            CHECK(text.find("The screen, flat") != std::string::npos);
            for (const auto& picture : study.picture.pictures) {
                study::Place place;
                place.projector = picture.projector;
                place.format = picture.format;
                const double past = tests::figure_value(study, "picture.overfill_left", place);
                const std::string length = base::quantity_text(past, base::Unit::millimetre);
                INFO(length);
                // The first stands in the drawing, the others under theirs.
                const bool shown = text.find("past " + length) != std::string::npos ||
                                   text.find("past left " + length) != std::string::npos;
                CHECK(shown);
            }
        }
    }

    TEST_CASE("the reference seat and the seat with most hidden of each format are looked from") {
        for (const char* name : {"screening-24", "converted-hall-96"}) {
            const study::Study& study = tests::studied(name);
            const TemporaryPdf pdf(report_of(study, options()));
            const std::string text = flowing(pdf.asked("pdftotext", "-"));
            CHECK(text.find("From the seats") != std::string::npos);
            for (std::size_t f = 0; f < study.sight.formats.size(); ++f) {
                const auto& seats = study.sight.formats[f].hidden;
                const auto worst =
                    std::ranges::max_element(seats, {}, &sight::SeatHidden::hidden_fraction);
                const auto seat = static_cast<std::size_t>(worst - seats.begin());
                const std::string at = study.layout().formats[f].name + " · most hidden, seat " +
                                       study.seats.seats[seat].name;
                CHECK_MESSAGE(text.find(at) != std::string::npos, at);
                CHECK(text.find("hidden " + base::quantity_text(worst->hidden_fraction,
                                                                base::Unit::fraction)) !=
                      std::string::npos);
            }
        }
    }

    TEST_CASE("pages are A4 with metric dimensions, Letter with feet where units are imperial") {
        const study::Study& study = tests::studied("screening-24");
        const TemporaryPdf metric(report_of(study, options()));
        CHECK(metric.asked("pdfinfo").find("A4") != std::string::npos);
        const TemporaryPdf imperial(report_of(study, options(base::UnitSystem::imperial)));
        CHECK(imperial.asked("pdfinfo").find("letter") != std::string::npos);
        const std::string text = flowing(imperial.asked("pdftotext", "-"));
        const double throw_m = tests::figure_value(study, "picture.throw");
        CHECK(text.find("throw " + base::quantity_text(throw_m, base::Unit::metre,
                                                       base::UnitSystem::imperial)) !=
              std::string::npos);
        CHECK(text.find("throw " + base::quantity_text(throw_m, base::Unit::metre)) ==
              std::string::npos);
    }

    TEST_CASE("the title block names room, file, date, limits and version") {
        const study::Study& study = tests::studied("grand-620");
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string text = flowing(pdf.asked("pdftotext -f 1 -l 1", "-"));
        for (const std::string& wanted :
             {study.layout().name, std::string("rooms/mine.json"), std::string("2026-11-24"),
              study.brief->limits.name, std::string("Rakeline 0.1.0"), std::string("Signature"),
              std::string("Invented")}) {
            INFO(wanted);
            CHECK(text.find(wanted) != std::string::npos);
        }
    }

    TEST_CASE("refuses: a date that is none") {
        const study::Study& study = tests::studied("screening-24");
        for (const char* date : {"", "today", "24.11.2026", "2026-1-2"}) {
            report::ReportOptions with = options();
            with.date = date;
            const auto pdf = report::pdf_report(study, with);
            REQUIRE_FALSE(pdf);
            CHECK(pdf.problems()[0].where == "date");
        }
    }

    TEST_CASE("an empty room still gives a report") {
        const auto study = study::compute_study(std::make_shared<const room::Brief>(room::Brief{}));
        const TemporaryPdf pdf(report_of(study, options()));
        CHECK(page_count(pdf) > 4);
    }
}
