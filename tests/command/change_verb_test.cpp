// SPDX-License-Identifier: MIT
#include "command/running.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using nlohmann::json;

TEST_SUITE("command/change_verb") {
    TEST_CASE("change prints a sheet for every projector, then every change both ways") {
        const Ran all = ran({"change", kHall});
        CHECK(all.status == 0);
        CHECK(all.err.empty());
        for (const char* part :
             {"Film 35 mm: format change sheet", "Digital: format change sheet", "Prime 67.5 mm",
              "20.96 × 15.29 mm", "2048 × 858", "Left mask stands at",
              "Film 35 mm, from 1.37 to 2.39", "Film 35 mm, from 2.39 to 1.37", "by 1792.2 mm",
              "Bring the anamorphic attachment in, 2×", "△ Moving masking",
              "Local rules and the maker's instructions"}) {
            CHECK(has(all.out, part));
        }
        CHECK(all.out.find("Digital, from 1.85 to 1.37") > all.out.find("Digital: format change"));
    }

    TEST_CASE("change keeps to the projector and the formats named") {
        const Ran one =
            ran({"change", kHall, "--projector", "Digital", "--from", "1.37", "--to", "2.39"});
        CHECK(one.status == 0);
        CHECK(has(one.out, "Digital, from 1.37 to 2.39"));
        CHECK(one.out.find("Film 35 mm") == std::string::npos);
        CHECK(one.out.find("from 2.39") == std::string::npos);
        const Ran same = ran({"change", kHall, "--from", "1.85", "--to", "1.85"});
        CHECK(has(same.out, "Nothing changes."));
    }

    TEST_CASE("change in imperial units sets masks in inches and reads foot-lamberts") {
        const Ran feet = ran({"change", kHall, "--imperial"});
        CHECK(has(feet.out, "165.354 in"));  // 4200 mm / 25.4
        CHECK(has(feet.out, " fL"));
        CHECK(feet.out.find(" mm off") == std::string::npos);
    }

    TEST_CASE("change --json lists sheets and moves, in SI and with their sources") {
        const Ran run = ran({"change", kHall, "--json", "-"});
        CHECK(run.status == 0);
        const json out = json::parse(run.out);
        REQUIRE(out.at("sheets").size() == 2);
        CHECK(out.at("changes").size() == 12);
        for (const json& sheet : out.at("sheets"))
            for (const json& row : sheet.at("rows"))
                CHECK(row.at("cells").size() == sheet.at("formats").size());
        const json& list = out.at("changes").at(2);
        CHECK(list.at("from") == "1.37");
        CHECK(list.at("to") == "2.39");
        const json& mask = list.at("moves").at(1);
        CHECK(mask.at("kind") == "open_mask");
        check_close(mask.at("by").get<double>(), 1.792225, printed_digits(6));
        CHECK(mask.at("unit") == "m");
        CHECK(mask.at("to").at("sources").at(0) == "picture.mask_left");
        CHECK_FALSE(out.contains("machines"));
    }

    TEST_CASE("change --machine puts one format on two machines side by side") {
        const Ran text = ran({"change", kHall, "--machine", "Digital", "--format", "2.39"});
        CHECK(text.status == 0);
        CHECK(has(text.out, "2.39 on two machines"));
        CHECK(has(text.out, "-0.11 m"));
        const Ran grand = ran({"change", demo_path("grand-620"), "--machine", "Film 70 mm",
                               "--format", "1.85", "--json", "-"});
        const json out = json::parse(grand.out).at("machines");
        CHECK(out.at("to").at("proposed") == false);
        CHECK(has(out.at("to").at("proposal").get<std::string>(), "can't be shown"));
    }

    TEST_CASE("change writes a page for the wall or text, whole, and the same bytes each time") {
        const Folder folder;
        const std::string pdf = folder.file("change.pdf");
        const std::vector<std::string> words = {"change", kHall, "-o", pdf, "--date", "2026-11-24"};
        CHECK(ran(words).status == 0);
        const std::string first = Folder::read(pdf);
        CHECK(first.starts_with("%PDF"));
        CHECK(ran(words).status == 0);
        CHECK(Folder::read(pdf) == first);
        const std::string txt = folder.file("change.txt");
        CHECK(ran({"change", kHall, "-o", txt}).status == 0);
        CHECK(Folder::read(txt) == ran({"change", kHall}).out);
    }

    TEST_CASE("refuses: names that are not there, with the nearest; other files; half a question") {
        const Ran projector = ran({"change", kHall, "--projector", "Digitel"});
        CHECK(projector.status == 2);
        CHECK(projector.out.empty());
        CHECK(has(projector.err, "did you mean 'Digital'?"));
        const Ran both = ran({"change", kHall, "--from", "1.38", "--to", "2.93"});
        CHECK(both.status == 2);
        CHECK(has(both.err, "'1.38'"));
        CHECK(has(both.err, "'2.93'"));
        CHECK(ran({"change", kHall, "--machine", "Digital"}).status == 2);
        CHECK(ran({"change", kHall, "--format", "2.39"}).status == 2);
        CHECK(ran({"change", kHall, "-o", "x.doc"}).status == 2);
        CHECK(ran({"change", kHall, "-o", "x.pdf", "--date", "soon"}).status == 2);
        CHECK(ran({"change", "no-such.json"}).status == 2);
        const Ran wide = ran({"change", demo_path("grand-620"), "--projector", "Film 70 mm",
                              "--from", "1.37", "--to", "2.20"});
        CHECK(wide.status == 2);
        CHECK(has(wide.err, "no projector chosen makes the formats chosen"));
    }
}
