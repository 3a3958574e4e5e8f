// SPDX-License-Identifier: MIT
#include "command/running.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

void check_refused(const std::vector<std::string>& words, const std::string& with) {
    const Ran run = ran(words);
    CHECK(run.status == 2);
    CHECK(run.out.empty());
    CHECK(has(run.err, with));
}

}  // namespace

TEST_SUITE("command/crowd_verb") {
    TEST_CASE("the crowd is told in sentences, row by row, and its least clear seats by name") {
        const Ran run = ran({"crowd", kScreening, "--precision", "10"});
        CHECK(run.status == 0);
        CHECK(run.err.empty());
        CHECK(has(run.out, "crowds leave every seat at least 95 % clear"));
        CHECK(has(run.out, "Least clear seat of each row"));
        CHECK(has(run.out, "Least clear seats"));
        CHECK(has(run.out, "50.0 % women, every seat taken"));
    }

    TEST_CASE("words go over what the layout says, and the same seed gives the same bytes") {
        const std::vector<std::string> words{"crowd",       kScreening, "--taken", "50",
                                             "--women",     "20 %",     "--seed",  "9",
                                             "--precision", "8",        "--json",  "-"};
        const Ran run = ran(words);
        REQUIRE(run.status == 0);
        CHECK(run.out == ran(words).out);
        const auto json = nlohmann::json::parse(run.out);
        CHECK(json["taken_fraction"] == 0.5);
        CHECK(json["women_fraction"] == 0.2);
        CHECK(json["seed"] == 9);
        CHECK(json["formats"].size() == 2);
        for (const auto& seat : json["formats"][0]["seats"]) {
            CHECK(seat["low"].get<double>() <= seat["chance"].get<double>());
            CHECK(seat["high"].get<double>() - seat["low"].get<double>() <= 2.0 * 0.08);
        }
    }

    TEST_CASE("an emptier house is clearer") {
        const auto mean = [](const char* taken) {
            const Ran run =
                ran({"crowd", kScreening, "--taken", taken, "--precision", "5", "--json", "-"});
            return nlohmann::json::parse(run.out)["formats"][0]["seats_clear"].get<double>();
        };
        CHECK(mean("100") < mean("50"));
        CHECK(mean("50") < mean("10"));
    }

    TEST_CASE("refuses: shares that may be meant either way, out of range, or no numbers") {
        check_refused({"crowd", kScreening, "--taken", "0.7"}, "--taken");
        check_refused({"crowd", kScreening, "--women", "170"}, "--women");
        check_refused({"crowd", kScreening, "--taken", "half"}, "--taken");
        check_refused({"crowd", kScreening, "--precision", "60"}, "--precision");
        check_refused({"crowd", kScreening, "--seed", "-1"}, "--seed");
        check_refused({"crowd", kScreening, "--format", "9"}, "there is no format '9'");
    }

    TEST_CASE("refuses: a room without seats") {
        const Folder folder;
        const std::string file =
            folder.write("room.json", R"({"rakeline_layout": 1, "limits_file": "l.json"})");
        folder.write("l.json", R"({"rakeline_limits": 1, "name": "t", "limits": []})");
        check_refused({"crowd", file}, "the room has no seats");
    }

    TEST_CASE("study and explain draw the crowd; --no-crowd leaves it out and says so") {
        const Ran whole = ran({"study", kScreening});
        CHECK(has(whole.out, "Clear chance"));
        CHECK(has(whole.out, "crowds leave every seat at least 95 % clear"));
        const Ran without = ran({"study", kScreening, "--no-crowd"});
        CHECK(has(without.out, "not sampled"));
        CHECK_FALSE(without.out.find("Crowds drawn") != std::string::npos);
        const auto json =
            nlohmann::json::parse(ran({"study", kScreening, "--json", "-", "--no-crowd"}).out);
        CHECK(json["crowd"].is_null());
        for (const auto& figure : json["figures"])
            CHECK(figure["id"].get<std::string>().find("clear_chance") == std::string::npos);
        const Ran explained = ran({"explain", kScreening, "sight.clear_chance"});
        CHECK(explained.status == 0);
        CHECK(has(explained.out, "people drawn"));
        CHECK(has(explained.out, "ANSUR"));
        CHECK(has(explained.out, "yours to set"));
    }
}
