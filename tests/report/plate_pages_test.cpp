// SPDX-License-Identifier: MIT
#include "drawing/studied_room.hpp"
#include "report/pdf_file.hpp"
#include "report/plate_reader.hpp"
#include "report/plate_sheet.hpp"
#include "study/gate_plate.hpp"

#include <regex>

using namespace rakeline;
using tests::options;
using tests::report_of;
using tests::TemporaryPdf;

namespace {

constexpr double kMmPerPoint = 25.4 / 72.0;  // Source: ISO 32000-1:2008, 8.3.2.3, from memory

/// The converter writes paths to 1/256 point, 0.0014 mm, at both ends.
const tests::Tolerance kConverter = tests::absolute(0.005, "the converter's grid");

int page_of(const TemporaryPdf& pdf, const std::string& words) {
    for (int page = 1; page < 200; ++page) {
        const std::string number = std::to_string(page);
        const std::string text = pdf.asked("pdftotext -f " + number + " -l " + number, "-");
        if (text.find(words) != std::string::npos) return page;
    }
    FAIL("no page says " << words);
    return 0;
}

/// Extents in mm of every path of a page, read back by a general-purpose converter
/// (pdftocairo of poppler-utils); points before its fit to the output's size are the file's own.
std::vector<glm::dvec2> path_sizes_mm(const TemporaryPdf& pdf, int page) {
    const std::string number = std::to_string(page);
    const std::string svg = pdf.asked("pdftocairo -svg -f " + number + " -l " + number, "-");
    static const std::regex path("<path [^>]*stroke:rgb[^>]* d=\"([^\"]+)\"");
    static const std::regex point("([0-9.]+) ([0-9.]+) ");
    std::vector<glm::dvec2> sizes;
    for (std::sregex_iterator p(svg.begin(), svg.end(), path), end; p != end; ++p) {
        const std::string d = (*p)[1];
        tests::Points points;
        for (std::sregex_iterator q(d.begin(), d.end(), point); q != end; ++q)
            points.emplace_back(tests::number_in((*q)[1]), tests::number_in((*q)[2]));
        if (points.size() > 1) sizes.push_back(kMmPerPoint * tests::extent(points));
    }
    return sizes;
}

bool drawn(const std::vector<glm::dvec2>& sizes, glm::dvec2 mm) {
    return std::any_of(sizes.begin(), sizes.end(), [&](glm::dvec2 size) {
        return tests::is_close(size.x, mm.x, kConverter) &&
               tests::is_close(size.y, mm.y, kConverter);
    });
}

double picture_focal_length_m(const std::string& format) {
    const study::Study& study = tests::studied("converted-hall-96");
    for (const auto& picture : study.picture.pictures) {
        const auto f = static_cast<std::size_t>(picture.format);
        if (study.layout().formats.at(f).name == format) return picture.focal_length_m;
    }
    FAIL("no format " << format);
    return 0.0;
}

/// A copy of the demo hall with its film plates given allowance and round corners, and the screen a
/// radius.
study::Study hall_with(double radius_m, double allowance_m, double corner_radius_m) {
    room::Brief brief = *tests::demo_brief("converted-hall-96");
    brief.layout.screen.radius_m = radius_m;
    for (room::FormatUse& use : brief.layout.projectors.at(0).formats) {
        use.plate_allowance_m = allowance_m;
        use.plate_corner_radius_m = corner_radius_m;
        // Short enough to fill the opening of a curved screen too.
        use.lens.clear();
        use.focal_length_m = 0.9 * picture_focal_length_m(use.format);
    }
    return study::compute_study(std::make_shared<const room::Brief>(brief));
}

glm::dvec2 opening_mm(const picture::Plate& plate) {
    return report::plate_box({.plate = plate, .room = {}, .projector = {}, .format = {}}).size_mm();
}

}  // namespace

TEST_SUITE("report/plate_pages") {
    TEST_CASE("golden: every plate is drawn at true size and at ten times, with a bar of 20 mm") {
        const study::Study& study = tests::studied("converted-hall-96");
        const TemporaryPdf pdf(report_of(study, options()));
        const int first = page_of(pdf, "Gate plates");
        const auto sizes = path_sizes_mm(pdf, first);
        CHECK(drawn(sizes, {20.0, 6.0 * kMmPerPoint}));
        const auto& uses = study.layout().projectors.at(0).formats;
        REQUIRE(uses.size() == 3);
        for (int f = 0; f < 3; ++f) {
            INFO("format ", f);
            const auto plate = study::gate_plate(study, 0, f);
            REQUIRE(plate);
            const glm::dvec2 opening = opening_mm(*plate);
            const glm::dvec2 aperture = 1e3 * plate->aperture_m;
            CHECK(drawn(sizes, opening));
            CHECK(drawn(sizes, aperture));
            const auto tenfold = path_sizes_mm(pdf, first + 1 + f);
            CHECK(drawn(tenfold, 10.0 * opening));
            CHECK(drawn(tenfold, 10.0 * aperture));
            CHECK(drawn(tenfold, {20.0, 6.0 * kMmPerPoint}));
        }
        // A size that is not there is not found: the check can fail.
        CHECK_FALSE(drawn(sizes, 1.01 * opening_mm(*study::gate_plate(study, 0, 0))));
    }

    TEST_CASE("US Letter holds the largest 35 mm aperture at ten times too") {
        const study::Study& study = tests::studied("converted-hall-96");
        const TemporaryPdf pdf(report_of(study, options(base::UnitSystem::imperial)));
        const auto sizes = path_sizes_mm(pdf, page_of(pdf, "Gate plates") + 3);
        CHECK(drawn(sizes, {209.55, 175.26}));
    }

    TEST_CASE("a 70 mm gate, too large for the sheet at ten times, says how much larger it is") {
        const study::Study& study = tests::studied("grand-620");
        const TemporaryPdf pdf(report_of(study, options()));
        const int page = page_of(pdf, "gate plate at 4:1");
        const auto plate = study::gate_plate(study, 1, 2);
        REQUIRE(plate);
        CHECK(drawn(path_sizes_mm(pdf, page), 4.0 * opening_mm(*plate)));
    }

    TEST_CASE("what has no plate says why instead, and what would help") {
        const study::Study& study = tests::studied("grand-620");
        const auto refused = study::gate_plate(study, 0, 1);
        REQUIRE_FALSE(refused);
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string text = pdf.asked("pdftotext", "-");
        CHECK(text.find("No plate to file: at the picture's") != std::string::npos);
        CHECK(text.find("What would help: choose a shorter focal length") != std::string::npos);
    }

    TEST_CASE("points, allowance and caution stand beside the drawing") {
        const study::Study study = hall_with(0.0, 2e-4, 0.0);
        const auto plate = study::gate_plate(study, 0, 0);
        REQUIRE(plate);
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string page = std::to_string(page_of(pdf, "gate plate at 10:1"));
        const std::string text = pdf.asked("pdftotext -layout -f " + page + " -l " + page, "-");
        CHECK(text.find("0.200 mm") != std::string::npos);
        CHECK(text.find("lamp cold") != std::string::npos);
        CHECK(text.find("no source)") != std::string::npos);
        for (const glm::dvec2 p : picture::outline_seen(*plate, picture::PlateView::from_lamp)) {
            CHECK(text.find(base::fixed_text(1e3 * p.x, 3)) != std::string::npos);
            CHECK(text.find(base::fixed_text(1e3 * p.y, 3)) != std::string::npos);
        }
    }

    TEST_CASE("the many points of round corners and a curved screen get a sheet of their own") {
        const study::Study study = hall_with(12.0, 0.0, 0.05);
        const auto plate = study::gate_plate(study, 0, 2);
        REQUIRE(plate);
        REQUIRE(plate->outline_m.size() > 24);
        const TemporaryPdf pdf(report_of(study, options()));
        const std::string text = pdf.asked("pdftotext -layout", "-");
        CHECK(text.find("The outline's") != std::string::npos);
        CHECK(text.find("points of the outline as seen from the lamp") != std::string::npos);
        const auto seen = picture::outline_seen(*plate, picture::PlateView::from_lamp);
        CHECK(text.find(base::fixed_text(1e3 * seen.back().x, 3)) != std::string::npos);
    }

    TEST_CASE("a room without film has no plates") {
        const TemporaryPdf pdf(report_of(tests::studied("steep-240"), options()));
        CHECK(pdf.asked("pdftotext", "-").find("Gate plates") == std::string::npos);
    }
}
