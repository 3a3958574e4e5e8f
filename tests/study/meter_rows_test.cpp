// SPDX-License-Identifier: MIT
#include "study/meter_rows.hpp"

#include "support/check.hpp"

#include <doctest/doctest.h>

using namespace rakeline;
using tests::check_close;

namespace {

base::Result<std::vector<study::MeterRow>> read(const std::string& text) {
    return study::read_meter_rows(text, "r.csv");
}

/// The first problem names the line and column, and says `part`.
void check_refused(const std::string& text,
                   int line,
                   const std::string& where,
                   const std::string& part) {
    const auto rows = read(text);
    REQUIRE_FALSE(rows);
    const base::Problem& problem = rows.problems().front();
    INFO(base::text(problem));
    CHECK(problem.file == "r.csv");
    CHECK(problem.line == line);
    CHECK(problem.where == where);
    CHECK(problem.what.find(part) != std::string::npos);
    CHECK_FALSE(problem.mend.empty());
}

}  // namespace

TEST_SUITE("study/meter_rows") {
    TEST_CASE("points, places, units, spot, accuracy and seat are read in any order of columns") {
        const auto rows = read(
            "unit,value,point,across_m,up_m,seat,spot_deg,accuracy\r\n"
            "cd/m2,48.2,centre,,,,1,\r\n"
            "fL,14,Top_Left,,,C4,,0.2\r\n"
            "lx,150,,-1.25,0.5,,,\r\n"
            "fc,10,,0,0,,0,\r\n");
        REQUIRE(rows);
        REQUIRE(rows->size() == 4);
        CHECK((*rows)[0].point == light::kCentre);
        CHECK((*rows)[0].value == 48.2);
        CHECK((*rows)[0].line == 2);
        check_close((*rows)[0].spot_rad, base::radians(1.0), tests::relative(1e-15, "rounding"));
        // 1 fL = 3.4262591 cd/m2, 1 fc = 10.7639104 lx: NIST SP 811, app. B.8, as reported.
        check_close((*rows)[1].value, 14 * 3.4262591, tests::relative(1e-7, "printed digits"));
        check_close(*(*rows)[1].accuracy, 0.2 * 3.4262591, tests::relative(1e-7, "printed digits"));
        CHECK((*rows)[1].seat == "C4");
        CHECK((*rows)[1].point == light::kTopLeft);
        CHECK((*rows)[2].unit == base::Unit::lux);
        CHECK_FALSE((*rows)[2].point);
        CHECK((*rows)[2].place_m == glm::dvec2(-1.25, 0.5));
        check_close((*rows)[3].value, 107.639104, tests::relative(1e-7, "printed digits"));
    }

    TEST_CASE("places may be in feet") {
        const auto rows = read("across_ft,up_ft,value,unit\n10,-1,14,fL\n");
        REQUIRE(rows);
        check_close(rows->front().place_m.x, 3.048, tests::relative(1e-15, "rounding"));
        check_close(rows->front().place_m.y, -0.3048, tests::relative(1e-15, "rounding"));
    }

    TEST_CASE("every standard point has a name that reads back") {
        for (int i = 0; i < light::kPointCount; ++i) {
            const auto point = static_cast<light::PicturePoint>(i);
            const auto rows = read(std::string("point,value,unit\n") +
                                   study::meter_point_name(point) + ",1,lx\n");
            REQUIRE(rows);
            CHECK(rows->front().point == point);
        }
    }

    TEST_CASE("refuses: a table without the columns it needs, or with others") {
        check_refused("point,unit\ncentre,lx\n", 1, "header", "no column value");
        check_refused("value,unit\n1,lx\n", 1, "header", "where the readings");
        check_refused("point,value,unit,spott_deg\ncentre,1,lx,\n", 1, "header", "spott_deg");
        check_refused("point,value,unit,value\ncentre,1,lx,1\n", 1, "header", "twice");
        check_refused("point;value;unit\ncentre;1;lx\n", 1, "header", "point;value;unit");
        check_refused("point,value,unit\n", 0, "", "no readings");
        check_refused("", 0, "", "no rows");
        check_refused("point,value,unit\ncentre,\xFF,lx\n", 0, "", "UTF-8");
    }

    TEST_CASE("refuses: cells that hold no reading, each by line and column") {
        const std::string head = "point,value,unit,spot_deg,accuracy\n";
        check_refused(head + "centre,nan,cd/m2,,\n", 2, "value", "no number");
        check_refused(head + "centre,inf,cd/m2,,\n", 2, "value", "no number");
        check_refused(head + "centre,,cd/m2,,\n", 2, "value", "no number");
        check_refused(head + "centre,-1,cd/m2,,\n", 2, "value", "less than nothing");
        check_refused(head + "centre,\"48,2\",cd/m2,,\n", 2, "value", "no number");
        check_refused(head + "centre,48,nits,,\n", 2, "unit", "nits");
        check_refused(head + "centre,48,,,\n", 2, "unit", "no unit");
        check_refused(head + "middle,48,fL,,\n", 2, "point", "middle");
        check_refused(head + "centre,48,fL,45,\n", 2, "spot_deg", "out of range");
        check_refused(head + "centre,48,lx,1,\n", 2, "spot_deg", "acceptance angle");
        check_refused(head + "centre,48,fL,,0\n", 2, "accuracy", "over 0");
        check_refused(head + "\ncentre,48,fL\n", 3, "", "3 cells");
        check_refused("point,across_m,up_m,value,unit\nleft,1,1,48,fL\n", 2, "point", "two ways");
        check_refused("across_m,up_m,value,unit\n1,,48,fL\n", 2, "up_m", "no number");
    }

    TEST_CASE("refuses: all faults of a table at once, and a table without end") {
        const auto rows = read("point,value,unit\nmiddle,x,y\ncentre,-2,fL\n");
        REQUIRE_FALSE(rows);
        CHECK(rows.problems().size() == 4);
        std::string many = "point,value,unit\n";
        for (int i = 0; i < 1001; ++i)
            many += "centre,1,lx\n";
        check_refused(many, 1002, "", "more than");
    }
}
