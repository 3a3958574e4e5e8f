// SPDX-License-Identifier: MIT
#include "room/refusal.hpp"

#include <filesystem>
#include <map>

using namespace rakeline;
using namespace rakeline::room;

namespace {

/// Files that exist only here.
base::ReadText reader(std::map<std::string, std::string> files) {
    return [files = std::move(files)](const std::string& path) -> base::Result<std::string> {
        const auto found = files.find(path);
        if (found != files.end()) return found->second;
        return base::Problem{path, 0, {}, "can't be opened", "check the name"};
    };
}

const std::string kLayout =
    "{\"rakeline_layout\": 1,\n\"name\": \"r\",\n\"limits_file\": \"practice/own.json\"}";
const std::string kLimits =
    R"({"rakeline_limits": 1, "name": "own", "limits": [{"figure": "picture.throw", "unit": "m",
        "most": 30, "authority": "yours", "source": "house rule"}]})";

}  // namespace

TEST_SUITE("room/brief") {
    TEST_CASE("a brief is the layout and the limits that it names, looked for beside it") {
        const auto brief =
            open_brief("rooms/a.json",
                       reader({{"rooms/a.json", kLayout}, {"rooms/practice/own.json", kLimits}}));
        REQUIRE(brief);
        CHECK(brief->layout.name == "r");
        CHECK(brief->limits.name == "own");
        REQUIRE(brief->limits.limits.size() == 1);
        CHECK(brief->limits.limits[0].most == 30.0);
    }

    TEST_CASE("the demo rooms open with the limits that they name") {
        int rooms = 0;
        for (const auto& entry :
             std::filesystem::directory_iterator(RAKELINE_SOURCE_DIR "/layouts")) {
            const std::string path = entry.path().string();
            if (!path.ends_with(".json") || path.ends_with("schema.json")) continue;
            const auto brief = open_brief(path, base::read_text_file);
            INFO((brief ? path : base::text(brief.problems())));
            REQUIRE(brief);
            CHECK_FALSE(brief->limits.limits.empty());
            ++rooms;
        }
        CHECK(rooms >= 3);
    }

    TEST_CASE("refuses: limits that are not there, on the layout's line that names them") {
        const auto brief = open_brief("rooms/a.json", reader({{"rooms/a.json", kLayout}}));
        REQUIRE_FALSE(brief);
        CHECK(base::text(brief.problems()) ==
              "rooms/a.json:3: limits_file: the limits \"practice/own.json\" were looked for at "
              "rooms/practice/own.json, which can't be opened; name a file of limits as seen from "
              "the layout's own folder\n");
    }

    TEST_CASE("refuses: limits that a layout leaves to the default and that are not there") {
        const auto brief = open_brief(
            "a.json", reader({{"a.json", "{\n\"rakeline_layout\": 1,\n\"name\": \"r\"}"}}));
        REQUIRE_FALSE(brief);
        CHECK(brief.problems().front().line == 1);
        CHECK(tests::contains(brief.problems().front().what, "practice/theatre.json"));
    }

    TEST_CASE("refuses: faults inside the limits, in the limits file's own name") {
        const auto brief = open_brief(
            "rooms/a.json",
            reader({{"rooms/a.json", kLayout}, {"rooms/practice/own.json", "{\n\"a\": 1,}"}}));
        REQUIRE_FALSE(brief);
        CHECK(brief.problems().front().file == "rooms/practice/own.json");
        CHECK(brief.problems().front().line == 2);
    }

    TEST_CASE("refuses: a layout that is not there or does not read, before any limits") {
        const auto missing = open_brief("rooms/a.json", reader({}));
        REQUIRE_FALSE(missing);
        CHECK(base::text(missing.problems()) == "rooms/a.json: can't be opened; check the name\n");
        const auto broken = open_brief("rooms/a.json", reader({{"rooms/a.json", "{"}}));
        REQUIRE_FALSE(broken);
        CHECK(broken.problems().front().file == "rooms/a.json");
    }
}
