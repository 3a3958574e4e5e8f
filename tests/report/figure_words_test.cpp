// SPDX-License-Identifier: MIT
#include "report/figure_words.hpp"

#include "drawing/studied_room.hpp"
#include "report/report.hpp"
#include "support/check.hpp"

#include <set>

using namespace rakeline;
using base::Unit;
using base::UnitSystem;

TEST_SUITE("report/figure_words") {
    TEST_CASE("a limit says its bounds, its band and whom it is for") {
        room::Limit limit;
        limit.least = 0.12;
        CHECK(report::limit_text(limit, Unit::millimetre, UnitSystem::metric) ==
              "at least 120.0 mm");
        limit.most = 0.15;
        limit.scope = room::LimitScope::last_row;
        CHECK(report::limit_text(limit, Unit::millimetre, UnitSystem::metric) ==
              "120.0 to 150.0 mm (last row)");
        room::Limit loss;
        loss.most = 6.0;
        loss.band_hz = 8000.0;
        CHECK(report::limit_text(loss, Unit::decibel, UnitSystem::metric) ==
              "at most 6.0 dB at " + base::quantity_text(8000.0, Unit::hertz));
    }

    TEST_CASE("limits follow the unit system") {
        room::Limit limit;
        limit.least = 0.3048;
        CHECK(report::limit_text(limit, Unit::metre, UnitSystem::imperial) == "at least 1.00 ft");
    }

    TEST_CASE("least, median and greatest are values of the figure with their places") {
        study::Figure figure;
        figure.values = {{0, 5.0}, {2, 1.0}, {3, 9.0}, {7, 2.0}};
        const auto spread = report::spread_of(figure);
        REQUIRE(spread);
        CHECK(spread->least == study::Value{2, 1.0});
        CHECK(spread->median == study::Value{7, 2.0});
        CHECK(spread->greatest == study::Value{3, 9.0});
        CHECK_FALSE(report::spread_of(study::Figure{}));
    }

    TEST_CASE("a figure names what it is of") {
        const study::Study& study = tests::studied("steep-240");
        study::Place place;
        place.format = 1;
        const auto* throw_of = study::find_figure(study, "picture.throw", place);
        const auto* seats = study::find_figure(study, "room.seats");
        REQUIRE(throw_of);
        REQUIRE(seats);
        CHECK(report::figure_of(study, *throw_of) == "Digital 4K · 2.39");
        CHECK(report::figure_of(study, *throw_of, "/") == "Digital 4K/2.39");
        CHECK(report::figure_of(study, *seats).empty());
    }

    TEST_CASE("tallies of all subjects add up to all figures") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study& study = tests::studied(name);
            int sum = 0;
            for (const study::Subject subject : study::kSubjects) {
                const report::Tally t = report::tally(study, subject);
                sum += t.holds + t.near + t.missed + t.no_limit;
            }
            CHECK(sum == static_cast<int>(study.figures.size()));
        }
    }

    TEST_CASE("cautions cover lamps, supply, heat, beams, rigging, exits and access, each once") {
        std::set<std::string> titles, texts;
        for (const auto& caution : report::cautions()) {
            titles.insert(caution.title);
            texts.insert(caution.text);
            const std::string text = caution.text;
            INFO(caution.title);
            CHECK(text.back() == '.');
            // Each defers to a rule or a profession outside this program.
            CHECK((text.find("local") != std::string::npos ||
                   text.find("licensed") != std::string::npos));
        }
        CHECK(titles.size() == report::cautions().size());
        CHECK(texts.size() == report::cautions().size());
        CHECK(titles.size() >= 7);
    }
}
