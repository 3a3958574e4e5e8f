// SPDX-License-Identifier: MIT
#include "command/command.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <nlohmann/json.hpp>

#include <iostream>
#include <sstream>

using namespace rakeline;
using nlohmann::json;

namespace {

struct Ran {
    int status = 0;
    std::string out, err;
};

/// `lens` with these words behind it; both streams kept.
Ran lens(std::vector<std::string> words) {
    words.insert(words.begin(), "lens");
    std::ostringstream out, err;
    auto* const out_before = std::cout.rdbuf(out.rdbuf());
    auto* const err_before = std::cerr.rdbuf(err.rdbuf());
    const int status = command::run(words, "1.2.3", [](const std::string&) { return 0; });
    std::cout.rdbuf(out_before);
    std::cerr.rdbuf(err_before);
    return {status, out.str(), err.str()};
}

bool has(const std::string& text, const std::string& part) {
    INFO("looking for '", part, "' in: ", text.substr(0, 2000));
    return text.find(part) != std::string::npos;
}

std::string series(const std::string& name) {
    return std::string(RAKELINE_SOURCE_DIR) + "/layouts/series/" + name + ".json";
}

const std::string kHall = tests::demo_path("converted-hall-96");
const std::string kScreening = tests::demo_path("screening-24");

}  // namespace

TEST_SUITE("command/lens_verb") {
    TEST_CASE("lens prints a ranked table, the reason and what is needed, for every pair") {
        const Ran all = lens({kScreening, "--series", series("lenses-digital")});
        CHECK(all.status == 0);
        CHECK(all.err.empty());
        for (const char* part :
             {"Digital laser, 1.85", "Digital laser, 2.39", "Throw ratio", "is first: at",
              "Needed: a focal length of", "(layout)", "(Digital zooms, generic series)"}) {
            CHECK(has(all.out, part));
        }
    }

    TEST_CASE("lens keeps to the projector and format named") {
        const Ran one = lens({kHall, "--projector", "Digital", "--format", "2.39"});
        CHECK(one.status == 0);
        CHECK(has(one.out, "\nDigital, 2.39\n"));
        CHECK_FALSE(one.out.find("Film 35 mm,") != std::string::npos);
        CHECK_FALSE(one.out.find("Digital, 1.85") != std::string::npos);
    }

    TEST_CASE("lens in imperial units sets focal lengths in inches") {
        CHECK(has(lens({kScreening, "--imperial"}).out, "Set to in"));
    }

    TEST_CASE("lens --json lists every lens once for every pair, covering ones first") {
        const Ran run = lens({kHall, "--series", series("lenses-35mm"), "--series",
                              series("lenses-digital"), "--json", "-"});
        CHECK(run.status == 0);
        const json out = json::parse(run.out);
        const auto layout = tests::demo_brief("converted-hall-96")->layout;
        REQUIRE(out.at("picks").size() == 6);
        for (const json& pick : out.at("picks")) {
            const json& lenses = pick.at("lenses");
            CHECK(lenses.size() > layout.lenses.size());
            CHECK(lenses.size() == out.at("picks")[0].at("lenses").size());
            bool dark = false;
            for (const json& l : lenses) {
                CHECK_FALSE((dark && l.at("covers").get<bool>()));
                dark = dark || !l.at("covers").get<bool>();
                CHECK(l.at("fits").get<bool>() ==
                      (l.at("picture").value("port_margin_m", 0.0) >= 0.0 &&
                       l.at("image_circle_spare_m").get<double>() >= 0.0 &&
                       l.at("field_lost").get<double>() == 0.0));
            }
            CHECK_FALSE(pick.at("reason").get<std::string>().empty());
        }
    }

    TEST_CASE("a series named twice adds its lenses once") {
        const std::string file = series("lenses-digital");
        CHECK(lens({kScreening, "--series", file, "--series", file}).out ==
              lens({kScreening, "--series", file}).out);
    }

    TEST_CASE("the focal length wanted is the figure's") {
        const auto study = study::compute_study(tests::demo_brief("converted-hall-96"));
        const json out = json::parse(
            lens({kHall, "--projector", "Film 35 mm", "--format", "2.39", "--json", "-"}).out);
        const json& pick = out.at("picks").at(0);
        const study::Place place{
            .projector = 0, .format = 2, .loudspeaker = {}, .seat = {}, .row = {}, .band = {}};
        const auto figure = [&](const char* id) {
            return *study::value_at(*study::find_figure(study, id, place));
        };
        const auto rounding = tests::relative(1e-12, "found from two focal lengths");
        tests::check_close(pick.at("focal_length_m").get<double>(), figure("picture.focal_length"),
                           rounding);
        tests::check_close(pick.at("focal_length_covering_m").get<double>(),
                           figure("picture.focal_length_covering"), rounding);
    }

    TEST_CASE("refuses: names, files and pairs that are not there") {
        CHECK(lens({kHall, "--format", "2.93"}).status == 2);
        CHECK(has(lens({kHall, "--projector", "Film"}).err, "there is no projector 'Film'"));
        const Ran none = lens({kHall, "--series", "no-such.json"});
        CHECK(none.status == 2);
        CHECK(none.out.empty());
        CHECK(has(none.err, "no-such.json"));
        const Ran layout = lens({kHall, "--series", kHall});
        CHECK(layout.status == 2);
        CHECK(has(layout.err, "converted-hall-96.json"));
    }
}
