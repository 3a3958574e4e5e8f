// SPDX-License-Identifier: MIT
#include "running.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("command/perforation") {
    TEST_CASE("sheets of the series beside the layout stand in a table under the one that hangs") {
        const Ran asked = ran({"perforation", kHall});
        CHECK(asked.status == 0);
        for (const char* part :
             {"now", "as it hangs", "10 kHz", "light lost", "beat", "Woven", "rigger"}) {
            INFO(part);
            CHECK(has(asked.out, part));
        }
    }

    TEST_CASE("as JSON the sheet that hangs comes first, in SI") {
        const Ran asked = ran({"perforation", kHall, "--json", "-"});
        CHECK(asked.status == 0);
        const auto json = nlohmann::json::parse(asked.out);
        const auto& sheets = json.at("sheets");
        CHECK(sheets.size() > 5);
        CHECK(sheets[0].at("name") == "as it hangs");
        CHECK(sheets[0].at("light_over_present") == 1.0);
        CHECK(sheets[1].at("pattern") == "none");
        CHECK_FALSE(sheets[1].contains("beat"));
        CHECK(sheets[2].at("hole_diameter_m") == 0.0012);
    }

    TEST_CASE("a sheet of the table, or the holes turned, is written as a layout that opens") {
        const Folder folder;
        const std::string hung = folder.file("hung.json");
        CHECK(ran({"perforation", kHall, "--take", "9", "-o", hung}).status == 0);
        CHECK(has(Folder::read(hung), "\"hole_diameter_m\": 0.00025"));
        CHECK(ran({"study", hung}).status != 2);
        const std::string turned = folder.file("turned.json");
        CHECK(ran({"perforation", kHall, "--take", "turn", "-o", turned}).status == 0);
        CHECK(ran({"study", turned}).status != 2);
    }

    TEST_CASE("refuses: a number that is not in the table, half an order, no series") {
        const Folder folder;
        const std::string out = folder.file("new.json");
        for (const char* take : {"0", "99", "1.5", "best"}) {
            const Ran bad = ran({"perforation", kHall, "--take", take, "-o", out});
            INFO(take);
            CHECK(bad.status == 2);
            CHECK(has(bad.err, "table"));
        }
        CHECK(ran({"perforation", kHall, "-o", out}).status == 2);
        CHECK(ran({"perforation", kHall, "--take", "1"}).status == 2);
        CHECK(ran({"perforation", kHall, "--take", "1", "-o", kHall}).status == 2);
        CHECK(ran({"perforation", kHall, "--series", folder.file("none.json")}).status == 2);
    }

    TEST_CASE("holes are drawn at true scale, and refused where there are no pixels") {
        const Folder folder;
        const std::string png = folder.file("holes.png");
        CHECK(ran({"draw", kHall, "--view", "holes", "--projector", "Digital", "-o", png}).status ==
              0);
        CHECK(Folder::read(png).size() > 1000);
        const Ran film = ran({"draw", kHall, "--view", "holes", "-o", png});
        CHECK(film.status == 2);
        CHECK(has(film.err, "film has no pixels"));
        CHECK(ran({"draw", kScreening, "--view", "holes", "-o", png}).status == 2);
    }
}
