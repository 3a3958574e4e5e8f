// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "drawing/studied_room.hpp"
#include "report/report.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;

namespace {

using Record = std::vector<std::string>;

/// A reader of RFC 4180, written apart from the writer.
std::vector<Record> parsed(const std::string& csv) {
    std::vector<Record> records(1, Record(1));
    bool quoted = false;
    for (std::size_t i = 0; i < csv.size(); ++i) {
        const char c = csv[i];
        if (quoted) {
            if (c == '"' && i + 1 < csv.size() && csv[i + 1] == '"') {
                records.back().back() += csv[++i];
            } else if (c == '"') {
                quoted = false;
            } else {
                records.back().back() += c;
            }
        } else if (c == '"') {
            quoted = true;
        } else if (c == ',') {
            records.back().emplace_back();
        } else if (c == '\r' && i + 1 < csv.size() && csv[i + 1] == '\n') {
            ++i;
            records.emplace_back(1);
        } else {
            records.back().back() += c;
        }
    }
    records.pop_back();  // the last record ends with a line end
    return records;
}

std::size_t column(const Record& head, const std::string& name) {
    const auto found = std::find(head.begin(), head.end(), name);
    REQUIRE_MESSAGE(found != head.end(), name);
    return static_cast<std::size_t>(found - head.begin());
}

}  // namespace

TEST_SUITE("report/seat_csv") {
    TEST_CASE("one record a seat under one head, all of the same length, heads all different") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = tests::studied(name);
            const auto records = parsed(report::seat_csv(study));
            REQUIRE(records.size() == study.seats.seats.size() + 1);
            for (const Record& record : records)
                CHECK(record.size() == records[0].size());
            Record heads = records[0];
            std::sort(heads.begin(), heads.end());
            CHECK(std::adjacent_find(heads.begin(), heads.end()) == heads.end());
        }
    }

    TEST_CASE("round trip: every number reads back as the figure's own, to the bit") {
        const study::Study& study = tests::studied("grand-620");
        const auto records = parsed(report::seat_csv(study));
        study::Place place;
        place.projector = 1;
        place.format = 2;
        const study::Figure* figure = study::find_figure(study, "light.luminance", place);
        if (!figure) figure = study::find_figure(study, "light.luminance");
        REQUIRE(figure);
        const auto& layout = study.layout();
        const std::size_t at =
            column(records[0],
                   "light.luminance [cd/m2] " +
                       layout.projectors.at(static_cast<std::size_t>(*figure->projector)).name +
                       "/" + layout.formats.at(static_cast<std::size_t>(*figure->format)).name);
        for (const study::Value& value : figure->values) {
            const Record& record = records.at(static_cast<std::size_t>(value.index) + 1);
            CHECK(record[0] == study.seats.seats.at(static_cast<std::size_t>(value.index)).name);
            const auto number = base::parse_number(record.at(at));
            REQUIRE(number);
            CHECK(*number == value.si);
        }
    }

    TEST_CASE("angles stand in degrees, places in metres") {
        const study::Study& study = tests::studied("steep-240");
        const auto records = parsed(report::seat_csv(study));
        const study::Figure* figure = study::find_figure(study, "sight.off_axis");
        REQUIRE(figure);
        const std::size_t at = column(records[0], "sight.off_axis [deg] 1.85");
        const std::size_t back = column(records[0], "back [m]");
        for (std::size_t i = 0; i < study.seats.seats.size(); ++i) {
            const auto angle = base::parse_number(records[i + 1].at(at));
            const auto metres = base::parse_number(records[i + 1].at(back));
            REQUIRE(angle);
            REQUIRE(metres);
            tests::check_close(*angle,
                               base::degrees(*study::value_at(*figure, static_cast<int>(i))),
                               tests::relative(1e-14, "one rounding"));
            CHECK(*metres == study.seats.seats[i].floor.z);
        }
    }

    TEST_CASE("commas and quotes in names are quoted") {
        room::Brief brief = *tests::demo_brief("screening-24");
        REQUIRE_FALSE(brief.layout.projectors.empty());
        brief.layout.projectors[0].name = "Digital, \"left\"";
        const auto study = study::compute_study(std::make_shared<const room::Brief>(brief));
        const auto records = parsed(report::seat_csv(study));
        CHECK(records.size() == study.seats.seats.size() + 1);
        column(records[0],
               "light.luminance [cd/m2] Digital, \"left\"/" + brief.layout.formats[0].name);
    }

    TEST_CASE("a room without seats gives the head alone") {
        const auto study = study::compute_study(std::make_shared<const room::Brief>(room::Brief{}));
        CHECK(parsed(report::seat_csv(study)).size() == 1);
    }
}
