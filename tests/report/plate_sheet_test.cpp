// SPDX-License-Identifier: MIT
#include "report/plate_sheet.hpp"

#include "base/number_text.hpp"
#include "geometry/polygon.hpp"
#include "report/plate_reader.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using picture::PlateView;
using report::PlateSheet;

namespace {

/// A plate that is the same neither upside down nor mirrored.
PlateSheet lopsided(PlateView view) {
    PlateSheet sheet;
    sheet.plate = {
        .outline_m = {{-0.009, -0.006}, {0.0101, -0.0062}, {0.0095, 0.0071}, {-0.0082, 0.0066}},
        .aperture_m = {0.020955, 0.015291},
        .corner_radius_m = 0.0,
        .allowance_m = 0.00015};
    sheet.view = view;
    sheet.room = "Invented <room> & hall";
    sheet.projector = "Film 35 mm";
    sheet.format = "1.37";
    return sheet;
}

/// The same points in the same places, in mm.
void check_outline(const Points& read, const PlateSheet& sheet, double scale) {
    const auto expected = picture::outline_seen(sheet.plate, sheet.view);
    REQUIRE(read.size() == expected.size());
    for (std::size_t i = 0; i < read.size(); ++i) {
        const glm::dvec2 off = read[i] - 1e3 * scale * expected[i];
        check_close(std::max(std::abs(off.x), std::abs(off.y)), 0.0,
                    absolute(1.01e-4, "four printed decimals, of the point and of the middle"));
    }
}

void check_says(const std::string& text, const std::string& part) {
    INFO("looking for '", part, "' in: ", text.substr(0, 3000));
    CHECK(text.find(part) != std::string::npos);
}

}  // namespace

TEST_SUITE("report/plate_sheet") {
    TEST_CASE("the words say whose plate, which view, side, allowance, size, scale and caution") {
        std::string all;
        for (const auto& words : report::plate_words(lopsided(PlateView::from_lamp)))
            all += words + "\n";
        for (const char* part :
             {"Invented <room> & hall", "Film 35 mm", "1.37", "Seen from the lamp", "half a turn",
              "File from the lamp side", "0.150 mm", "19.100 mm wide, 13.300 mm high",
              "20.955 mm by 15.291 mm", "millimetres", "1:1", "lamp off and cold",
              "common practice, no source"}) {
            check_says(all, part);
        }
        CHECK(all.find("10:1") == std::string::npos);
        const auto lens = report::plate_words(lopsided(PlateView::from_lens));
        CHECK(std::any_of(lens.begin(), lens.end(), [](const std::string& words) {
            return words.find("upside down and mirrored") != std::string::npos;
        }));
    }

    TEST_CASE("round trip: SVG gives the outline back in mm, at full size and ten times") {
        for (const auto view : {PlateView::from_lamp, PlateView::from_lens}) {
            PlateSheet sheet = lopsided(view);
            sheet.tenfold = true;
            const SvgPage page = read_svg(report::plate_svg(sheet));
            CHECK(page.width_unit == "mm");
            check_close(page.width_mm, page.view_width, absolute(0.0, "the same text"));
            check_close(page.height_mm, page.view_height, absolute(0.0, "the same text"));
            check_outline(page.about_middle("plate"), sheet, 1.0);
            check_outline(page.about_middle("plate_tenfold"), sheet, 10.0);
            for (const auto& path : page.paths) {
                for (const glm::dvec2 p : path.points) {
                    CHECK((p.x > 0.0 && p.x < page.width_mm));
                    CHECK((p.y > 0.0 && p.y < page.height_mm));
                }
            }
        }
    }

    TEST_CASE("an SVG has the tenfold drawing only where it is asked for") {
        CHECK(report::plate_svg(lopsided(PlateView::from_lamp)).find("plate_tenfold") ==
              std::string::npos);
    }

    TEST_CASE("SVG text escapes what XML keeps for itself") {
        const std::string svg = report::plate_svg(lopsided(PlateView::from_lamp));
        check_says(svg, "Invented &lt;room&gt; &amp; hall");
        CHECK(svg.find("<room>") == std::string::npos);
    }

    TEST_CASE("round trip: DXF gives the outline back in mm, closed, with layers and version") {
        for (const auto view : {PlateView::from_lamp, PlateView::from_lens}) {
            const PlateSheet sheet = lopsided(view);
            const DxfFile file = read_dxf(report::plate_dxf(sheet));
            CHECK(file.version == "AC1009");
            REQUIRE(file.polylines.size() == 2);
            CHECK(file.polylines[0].layer == "OPENING");
            CHECK(file.polylines[0].closed);
            check_outline(file.polylines[0].points, sheet, 1.0);
            CHECK(file.polylines[1].layer == "APERTURE");
            CHECK(file.polylines[1].closed);
            check_close(geometry::signed_area(file.polylines[1].points), 20.955 * 15.291,
                        absolute(4e-3, "half sides to four decimals"));
            CHECK(file.layers ==
                  std::vector<std::string>{"OPENING", "APERTURE", "CENTRE", "NOTES"});
            CHECK(file.lines == 2);
        }
    }

    TEST_CASE("both files' bounding boxes are the plate's, in mm") {
        const PlateSheet sheet = lopsided(PlateView::from_lamp);
        const glm::dvec2 size = report::plate_box(sheet).size_mm();
        check_close(size.x, 19.1, absolute(1e-12, "rounding"));
        check_close(size.y, 13.3, absolute(1e-12, "rounding"));
        const glm::dvec2 svg = extent(read_svg(report::plate_svg(sheet)).about_middle("plate"));
        const glm::dvec2 dxf = extent(read_dxf(report::plate_dxf(sheet)).polylines.at(0).points);
        for (const glm::dvec2 read : {svg, dxf}) {
            check_close(read.x, size.x, absolute(1e-4, "four printed decimals at both ends"));
            check_close(read.y, size.y, absolute(1e-4, "four printed decimals at both ends"));
        }
    }

    TEST_CASE("DXF holds every line of the words, ASCII alone, other letters by their code") {
        PlateSheet sheet = lopsided(PlateView::from_lamp);
        sheet.tenfold = true;  // a DXF is at full size all the same
        sheet.room = "Säle №1 \xF0\x9F\x8E\x9E\tend";
        const std::string bytes = report::plate_dxf(sheet);
        CHECK(std::all_of(bytes.begin(), bytes.end(),
                          [](char c) { return c == '\n' || (c >= 0x20 && c < 0x7F); }));
        const DxfFile file = read_dxf(bytes);
        CHECK(file.texts.at(2) == "Room: S\\U+00E4le \\U+21161 ? end");
        sheet.tenfold = false;
        CHECK(file.texts.size() == report::plate_words(sheet).size() + 1);
        check_says(bytes, "Units: millimetres");
        CHECK(bytes.find("10:1") == std::string::npos);
        CHECK(bytes.find("INSUNITS") == std::string::npos);  // a later version's variable
    }

    TEST_CASE("both drawings name the picture's top where it stands: below, from either side") {
        for (const auto view : {PlateView::from_lamp, PlateView::from_lens}) {
            const PlateSheet sheet = lopsided(view);
            const SvgPage page = read_svg(report::plate_svg(sheet));
            double lowest = 0.0;
            for (const glm::dvec2 p : page.paths.back().points)
                lowest = std::max(lowest, p.y);
            CHECK(page.text_at("picture's top").y > lowest);
            const DxfFile file = read_dxf(report::plate_dxf(sheet));
            REQUIRE(file.texts.at(0) == "picture's top");
            CHECK(file.text_places.at(0).y < -0.5 * 15.291);
        }
    }

    TEST_CASE("the same sheet gives the same bytes") {
        const PlateSheet sheet = lopsided(PlateView::from_lens);
        CHECK(report::plate_svg(sheet) == report::plate_svg(sheet));
        CHECK(report::plate_dxf(sheet) == report::plate_dxf(sheet));
    }
}
