// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "command/running.hpp"
#include "room/layout_file.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using tests::Folder;
using tests::has;
using tests::kHall;
using tests::ran;

namespace {

const std::string kReadings =
    std::string(RAKELINE_SOURCE_DIR) + "/layouts/readings-converted-hall-96.csv";

std::vector<std::string> words(std::vector<std::string> more) {
    std::vector<std::string> out{"meter",      kHall,      kReadings, "--projector",
                                 "Film 35 mm", "--format", "1.37"};
    out.insert(out.end(), more.begin(), more.end());
    return out;
}

}  // namespace

TEST_SUITE("command/meter_verb") {
    TEST_CASE("the demo readings show a lamp off centre, with what to do and the cautions") {
        const auto run = ran(words({}));
        CHECK(run.status == 0);
        CHECK(run.err.empty());
        CHECK(has(run.out, "Film 35 mm in 1.37"));
        CHECK(has(run.out, "Standard error"));
        CHECK(has(run.out, "move the lamp left"));
        CHECK(has(run.out, "under pressure hot and cold"));
        CHECK(has(run.out, "cd/m²"));
        CHECK(has(ran(words({"--imperial"})).out, "fL"));
    }

    TEST_CASE("what is adopted studies to the readings, and no file is written over unasked") {
        const Folder folder;
        const std::string made = folder.file("made.json");
        const std::string before = Folder::read(kHall);
        CHECK(ran(words({"--adopt", made})).status == 0);
        CHECK(Folder::read(kHall) == before);
        const auto layout = room::read_layout(Folder::read(made), made);
        REQUIRE(layout);
        CHECK(layout->projectors.front().flux.entry == room::FluxEntry::measured);
        CHECK(ran({"check", made}).status != 2);
        const auto again = ran({"meter", made, kReadings, "--json", "-"});
        CHECK(again.status == 0);
        const auto json = nlohmann::json::parse(again.out);
        for (const auto& part : json["parts"]) {
            const double adopted = part["layout_value"];
            tests::check_close(part["value"], adopted, {1e-8, 1e-8, "the same fit again"});
        }
        const std::string text = Folder::read(made);
        const auto refused = ran(words({"--adopt", made}));
        CHECK(refused.status == 2);
        CHECK(has(refused.err, "there already"));
        CHECK(Folder::read(made) == text);
        CHECK(ran(words({"--adopt", made, "--force"})).status == 0);
        CHECK(ran(words({"--adopt", kReadings, "--force"})).status == 2);
        CHECK(ran(words({"--json", kHall})).status == 2);
        CHECK(Folder::read(kHall) == before);
    }

    TEST_CASE("rounding is no residual, and readings all alike are doubted first") {
        const Folder folder;
        const auto read = [&](const std::string& rows) {
            const std::string file = folder.write("r.csv", "point,value,unit\n" + rows);
            const auto run = ran({"meter", kHall, file, "--format", "1.37"});
            CHECK(run.status == 0);
            return run.out;
        };
        const std::string two = read("centre,5000,cd/m2\nleft,4000,cd/m2\n");
        CHECK_FALSE(has(two, "e-1"));
        CHECK(has(two, "its own unit"));
        CHECK(has(read("centre,50,cd/m2\nleft,50,cd/m2\nright,50,cd/m2\ntop,50,cd/m2\n"),
                  "All 4 places read the same, 50.0 cd/m²"));
    }

    TEST_CASE("JSON to standard output and a picture of the residuals to a file") {
        const Folder folder;
        const auto run = ran(words({"--json", "-", "--draw", folder.file("map.png")}));
        CHECK(run.status == 0);
        CHECK(nlohmann::json::parse(run.out)["readings"].size() == 9);
        CHECK(Folder::read(folder.file("map.png")).starts_with("\x89PNG"));
    }

    TEST_CASE("refuses: bad readings by file, line and column with status 2, nothing written") {
        const Folder folder;
        const std::string made = folder.file("made.json");
        const auto refused = [&](const std::string& text, const std::string& part) {
            const std::string file = folder.write("bad.csv", text);
            const auto run = ran({"meter", kHall, file, "--adopt", made});
            CHECK(run.status == 2);
            CHECK(run.out.empty());
            CHECK(has(run.err, part));
            CHECK_FALSE(tests::fs::exists(made));
        };
        refused("point,value,unit\ncentre,-4,fL\n", "bad.csv:2: value");
        refused("point,value,unit\ncentre,4,fL\nmidle,4,fL\n", "bad.csv:3: point");
        refused("point,value,unit\nxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx,4,fL\n",
                "; there are centre, left");
        refused("across_m,up_m,value,unit\n40,0,4,fL\n", "beyond the picture's right edge");
        refused("point,value,unit\nleft,4,fL\nleft,4,fL\n", "bad.csv:3: point");
        refused("", "no rows");
        CHECK(ran({"meter", kHall, folder.file("none.csv")}).status == 2);
        CHECK(ran({"meter", kHall, kReadings, "--seat", "Q77"}).status == 2);
        CHECK(ran({"meter", kHall, kReadings, "--projector", "None"}).status == 2);
    }
}
