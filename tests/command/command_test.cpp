// SPDX-License-Identifier: MIT
#include "command/command.hpp"

#include "command/running.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("command/command") {
    TEST_CASE("without words the window opens on nothing, with a file on that") {
        CHECK(ran({}).window.empty());
        CHECK(ran({"room.json"}).window == "room.json");
    }

    TEST_CASE("help and version go to standard output and end well") {
        const Ran help = ran({"--help"});
        CHECK(help.status == 0);
        for (const char* verb :
             {"study", "check", "figures", "explain", "lens", "draw", "report", "plate"}) {
            CHECK(has(help.out, verb));
        }
        const Ran version = ran({"--version"});
        CHECK(version.status == 0);
        CHECK(has(version.out, "rakeline 1.2.3"));
        CHECK(ran({"study", "--help"}).status == 0);
    }

    TEST_CASE("refuses: words that no verb has") {
        CHECK(ran({"study"}).status == 2);
        CHECK(ran({"study", kHall, "--nonsense"}).status == 2);
        CHECK(ran({"study", kHall, "extra", "words"}).status == 2);
    }

    TEST_CASE("study prints the five subjects in order, then the findings") {
        const Ran study = ran({"study", kHall});
        CHECK(study.status == 0);
        CHECK(study.err.empty());
        std::size_t at = 0;
        for (const char* head :
             {"\nRoom", "\nPicture", "\nLight", "\nSight", "\nSound", "\nFindings"}) {
            const std::size_t found = study.out.find(head, at);
            INFO(head);
            REQUIRE(found != std::string::npos);
            at = found;
        }
    }

    TEST_CASE("study keeps a figure's name where the first projector has no value") {
        const Folder folder;
        auto layout = tests::demo_brief("converted-hall-96")->layout;
        layout.limits_file = RAKELINE_SOURCE_DIR "/layouts/practice/theatre.json";
        layout.projectors.front().aim = {.mode = room::AimMode::angles,
                                         .yaw_rad = base::radians(60.0)};
        const Ran study = ran({"study", folder.write("room.json", room::write_layout(layout))});
        INFO(study.err);
        CHECK(study.status == 0);
        CHECK(has(study.out, "  Throw ratio\n    Digital"));
    }

    TEST_CASE("study in imperial units speaks feet and foot-lamberts") {
        const Ran study = ran({"study", kHall, "--imperial"});
        CHECK(has(study.out, " ft"));
        CHECK(has(study.out, " fL"));
        CHECK_FALSE(study.out.find("cd/m² ") != std::string::npos);
    }

    TEST_CASE("study --json goes to standard output or to a file, the same bytes") {
        const Folder folder;
        const Ran shown = ran({"study", kHall, "--json", "-"});
        CHECK(shown.status == 0);
        CHECK(nlohmann::json::parse(shown.out).at("figures").size() > 50);
        const std::string file = folder.file("out.json");
        CHECK(ran({"study", kHall, "--json", file}).status == 0);
        CHECK(Folder::read(file) == shown.out);
    }

    TEST_CASE("study --time says on standard error how long it took") {
        const Ran study = ran({"study", kScreening, "--time"});
        CHECK(study.status == 0);
        CHECK(has(study.err, "studied in "));
    }

    TEST_CASE("check ends with 1 where a limit is missed and with 0 where all hold") {
        const Ran missed = ran({"check", kHall});
        CHECK(missed.status == 1);
        CHECK(has(missed.out, "missed "));
        const Folder folder;
        auto layout = tests::demo_brief("screening-24")->layout;
        layout.limits_file = "easy.json";
        folder.write("easy.json",
                     R"({"rakeline_limits": 1, "name": "easy", "limits": [{"figure": )"
                     R"("picture.throw", "least": 1, "unit": "m", "authority": "yours", )"
                     R"("source": "a test"}]})");
        const Ran holds = ran({"check", folder.write("room.json", room::write_layout(layout))});
        INFO(holds.err);
        CHECK(holds.status == 0);
        CHECK(has(holds.out, "All limits hold"));
    }

    TEST_CASE("figures lists the register as text and as JSON") {
        const Ran text = ran({"figures"});
        CHECK(text.status == 0);
        CHECK(has(text.out, "picture.keystone_vertical"));
        CHECK(has(text.out, "source: "));
        CHECK(nlohmann::json::parse(ran({"figures", "--json"}).out).size() ==
              study::figure_register().size());
    }

    TEST_CASE("explain shows formula, values, result and source") {
        const Ran explain =
            ran({"explain", kHall, "light.luminance", "--format", "2.39", "--seat", "c4"});
        CHECK(explain.status == 0);
        for (const char* part :
             {"seat C4", "2.39", "formula  L = E G / pi", "E = ", "G = ", "result", "source"}) {
            CHECK(has(explain.out, part));
        }
        CHECK(ran({"explain", kHall, "sound.screen_loss", "--band", "10000"}).status == 0);
        CHECK(ran({"explain", kHall, "sight.c_value", "--row", "D"}).status == 0);
    }

    TEST_CASE("refuses: names that the room does not have, with the nearest one") {
        const auto refused = [](const std::vector<std::string>& words, const std::string& says) {
            const Ran result = ran(words);
            CHECK(result.status == 2);
            CHECK(result.out.empty());
            CHECK(has(result.err, says));
        };
        refused({"explain", kHall, "picture.trow"}, "did you mean 'picture.throw'?");
        refused({"explain", kHall, "picture.throw", "--format", "2.93"}, "did you mean '2.39'?");
        refused({"explain", kHall, "picture.throw", "--projector", "Film"},
                "there is no projector 'Film'");
        refused({"explain", kHall, "light.luminance", "--seat", "Z99"}, "there is no seat 'Z99'");
        refused({"explain", kHall, "sound.screen_loss", "--band", "777"}, "there is no band '777'");
        refused({"study", kHall, "--format", "9"}, "there is no format '9'");
        refused({"draw", kHall, "--view", "above", "-o", "-"}, "there is no view 'above'");
        refused({"draw", kHall, "--view", "eye:Z9", "-o", "-"}, "there is no seat 'Z9'");
        refused({"draw", kHall, "--view", "seat:", "-o", "-"}, "no seat is chosen");
        refused({"draw", kHall, "--size", "0x9", "-o", "-"}, "'0x9' is no size");
        refused({"draw", kHall, "--sight-lines", "some", "-o", "-"},
                "there are no sight lines 'some'");
        refused({"draw", kHall, "--sight-lines", "selected", "-o", "-"}, "no seat is selected");
        refused({"draw", kHall, "--seat", "Z99", "-o", "-"}, "Z99");
        refused({"draw", kHall, "--view", "plan", "--luminance", "-o", "-"},
                "luminance is drawn over the picture");
        refused({"report", kHall, "-o", "report.doc"}, "neither a .pdf nor a .csv");
    }

    TEST_CASE("draw writes a PNG of the size asked for") {
        const Folder folder;
        for (const char* view : {"plan", "section", "port", "screen", "eye:B3"}) {
            const std::string file = folder.file("x.png");
            REQUIRE(ran({"draw", kHall, "--view", view, "--size", "640x360", "-o", file}).status ==
                    0);
            const std::string png = Folder::read(file);
            REQUIRE(png.size() > 2000);
            CHECK(png.substr(1, 3) == "PNG");
            const auto word = [&](std::size_t at) {
                return static_cast<unsigned char>(png[at + 2]) * 256 +
                       static_cast<unsigned char>(png[at + 3]);
            };
            CHECK(word(16) == 640);
            CHECK(word(20) == 360);
        }
    }

    TEST_CASE("draw --luminance shows another screen from another seat") {
        const Folder folder;
        const auto drawn = [&](const char* view, const char* seat) {
            const std::string file = folder.file("x.png");
            REQUIRE(ran({"draw", kHall, "--view", view, "--seat", seat, "--luminance", "--size",
                         "640x360", "-o", file})
                        .status == 0);
            return Folder::read(file);
        };
        CHECK(drawn("screen", "A1") != drawn("screen", "D6"));
        CHECK(drawn("screen", "A1") == drawn("screen", "A1"));
    }

    TEST_CASE("report writes a PDF and a seat table") {
        const Folder folder;
        const std::string pdf = folder.file("r.pdf");
        CHECK(ran({"report", kScreening, "-o", pdf, "--date", "2026-01-31"}).status == 0);
        CHECK(Folder::read(pdf).starts_with("%PDF-"));
        const std::string csv = folder.file("r.csv");
        CHECK(ran({"report", kScreening, "-o", csv}).status == 0);
        const std::string table = Folder::read(csv);
        CHECK(std::count(table.begin(), table.end(), '\n') == 25);
    }
}

TEST_SUITE("command/bad input") {
    TEST_CASE("refuses: a bad layout in every verb, with status 2, and leaves files untouched") {
        const Folder folder;
        const std::string bad = folder.write("bad.json", "{\"rakeline_layout\": 1, \"hall\": {");
        const std::string kept = folder.write("kept.pdf", "the old report");
        const std::vector<std::vector<std::string>> runs = {
            {"study", bad},
            {"study", bad, "--json", kept},
            {"check", bad},
            {"explain", bad, "picture.throw"},
            {"lens", bad, "--json", kept},
            {"draw", bad, "-o", kept},
            {"report", bad, "-o", kept},
            {"plate", bad, "--projector", "P", "--format", "F", "-o", folder.file("kept.svg")},
        };
        for (const auto& words : runs) {
            INFO(words.front());
            const Ran result = ran(words);
            CHECK(result.status == 2);
            CHECK(result.out.empty());
            CHECK(has(result.err, "bad.json:1: "));
            CHECK(Folder::read(kept) == "the old report");
            CHECK(Folder::read(bad) == "{\"rakeline_layout\": 1, \"hall\": {");
        }
    }

    TEST_CASE("refuses: a file or folder that can't be read or written") {
        const Folder folder;
        CHECK(has(ran({"study", folder.file("none.json")}).err, "can't be opened"));
        CHECK(has(ran({"study", folder.file("")}).err, "is a folder"));
        const Ran result = ran({"report", kScreening, "-o", folder.file("no/such/r.pdf")});
        CHECK(result.status == 2);
        CHECK(has(result.err, "can't be written"));
    }

    TEST_CASE("refuses: a layout whose limits file is missing, by both names") {
        const Folder folder;
        auto layout = tests::demo_brief("screening-24")->layout;
        layout.limits_file = "gone.json";
        const Ran result = ran({"check", folder.write("room.json", room::write_layout(layout))});
        CHECK(result.status == 2);
        CHECK(has(result.err, "room.json:"));
        CHECK(has(result.err, "limits_file"));
        CHECK(has(result.err, "gone.json"));
    }

    TEST_CASE("refuses: numbers out of range, many at once, each with its line") {
        const Folder folder;
        const std::string bad = folder.write(
            "bad.json",
            "{\n\"rakeline_layout\": 1,\n\"hall\": {\"width_m\": -3,\n\"hieght_m\": 4},\n"
            "\"seating\": [{\"rows\": 0}]\n}\n");
        const Ran result = ran({"check", bad});
        CHECK(result.status == 2);
        CHECK(has(result.err, "bad.json:3: hall.width_m: "));
        CHECK(has(result.err, "bad.json:4: hall.hieght_m: "));
        CHECK(has(result.err, "height_m"));
        CHECK(has(result.err, "bad.json:5: seating[0].rows: "));
    }
}
