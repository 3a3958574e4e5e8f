// SPDX-License-Identifier: MIT
#include "running.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("command/width") {
    TEST_CASE("every format has its widths, and status 1 where one has none") {
        const Ran steep = ran({"width", demo_path("steep-240")});
        CHECK(steep.status == 0);
        CHECK(has(steep.out, "2.39 may be "));
        CHECK(has(steep.out, "misses \"") + has(steep.out, "miss \"") > 0);
        CHECK(has(steep.out, "sill at 0.800 m"));
        const Ran small = ran({"width", kScreening});
        CHECK(small.status == 1);
        CHECK(has(small.out, "has no width at which 90.0 %"));
    }

    TEST_CASE("one format, another share and feet can be asked for") {
        const Ran asked =
            ran({"width", kHall, "--format", "2.39", "--share", "50 %", "--imperial"});
        CHECK(asked.status == 0);
        CHECK(has(asked.out, "2.39 may be "));
        CHECK(has(asked.out, " ft wide: there 50.0 %"));
        CHECK(asked.out.find("1.85 may be") == std::string::npos);
        CHECK(ran({"width", kHall, "--format", "2.39", "--share", "0.5", "--imperial"}).out ==
              asked.out);
    }

    TEST_CASE("as JSON the numbers are the same, in SI") {
        const Ran asked = ran({"width", kHall, "--format", "2.39", "--json", "-"});
        const auto json = nlohmann::json::parse(asked.out);
        const auto& one = json.at("widths").at(0);
        CHECK(one.at("format") == "2.39");
        CHECK(one.at("ranges").size() == 1);
        CHECK(one.at("ranges")[0].at("least_m") < one.at("ranges")[0].at("most_m"));
        const auto& above = one.at("ranges")[0].at("above").at(0);
        CHECK(above.at("bound") == "most");
        CHECK(above.at("unit") == "deg");
        CHECK_FALSE(above.at("seats").empty());
    }

    TEST_CASE("refuses: a share that is none, and an unknown format by its nearest name") {
        for (const char* share : {"0", "1.5", "-1", "many", "120 %"}) {
            const Ran bad = ran({"width", kHall, "--share", share});
            INFO(share);
            CHECK(bad.status == 2);
            CHECK(has(bad.err, "--share"));
            CHECK(bad.out.empty());
        }
        const Ran format = ran({"width", kHall, "--format", "2.93"});
        CHECK(format.status == 2);
        CHECK(has(format.err, "2.39"));
    }
}

TEST_SUITE("command/draw_contours") {
    TEST_CASE("contours of a figure are drawn on the plan") {
        const Folder folder;
        const std::string plain = folder.file("plain.png"), lines = folder.file("lines.png");
        CHECK(ran({"draw", kHall, "--view", "plan", "-o", plain}).status == 0);
        CHECK(ran({"draw", kHall, "--view", "plan", "--contours", "sight.off_axis", "-o", lines})
                  .status == 0);
        CHECK(Folder::read(plain) != Folder::read(lines));
    }

    TEST_CASE("refuses: contours of an unknown figure, of one without seats, off the plan") {
        const Folder folder;
        const std::string out = folder.file("none.png");
        const auto drawn = [&](const char* view, const char* id) {
            return ran({"draw", kHall, "--view", view, "--contours", id, "-o", out});
        };
        const Ran unknown = drawn("plan", "sight.off_axs");
        CHECK(unknown.status == 2);
        CHECK(has(unknown.err, "did you mean 'sight.off_axis'?"));
        CHECK(drawn("plan", "picture.throw").status == 2);
        const Ran section = drawn("section", "sight.off_axis");
        CHECK(section.status == 2);
        CHECK(has(section.err, "--view plan"));
        CHECK_FALSE(fs::exists(out));
    }
}
