// SPDX-License-Identifier: MIT
#include "command/running.hpp"
#include "room/layout_file.hpp"
#include "study/study.hpp"

#include <nlohmann/json.hpp>

using namespace rakeline;
using namespace rakeline::tests;
using nlohmann::json;

namespace {

const std::string kSteep = demo_path("steep-240");

Ran curve(std::vector<std::string> words) {
    words.insert(words.begin(), "curve");
    return ran(words);
}

}  // namespace

TEST_SUITE("command/curve_verb") {
    TEST_CASE("curve prints what is now, both tables, the most even of each, and cautions") {
        const Ran run = curve({kSteep});
        CHECK(run.status == 0);
        CHECK(run.err.empty());
        for (const char* part :
             {"the screen's curve and tilt", "now: ", "Curve, tilt as it is",
              "Tilt, curve as it is", "most even", "sagitta", "keystone", "a competent rigger"}) {
            INFO(part);
            CHECK(has(run.out, part));
        }
        CHECK(has(curve({kSteep, "--imperial"}).out, " ft"));
        CHECK(has(curve({kSteep, "--format", "2.39"}).out, "of the opening dark, which asks for"));
    }

    TEST_CASE("curve as JSON has a trial for every radius and tilt, and which is best") {
        const json out = json::parse(curve({kSteep, "--json", "-"}).out);
        CHECK(out.at("curves").size() == 41);
        CHECK(out.at("tilts").size() == 41);
        const auto best = out.at("best_curve").get<std::size_t>();
        const double evenness = out.at("curves").at(best).at("evenness").get<double>();
        for (const json& trial : out.at("curves")) {
            if (trial.at("clear_of_wall").get<bool>())
                CHECK(trial.at("evenness").get<double>() <= evenness);
        }
        CHECK(out.at("now").contains("side_seat"));
    }

    TEST_CASE("round trip: curve -o writes a layout whose own trial is the one that it took") {
        for (const char* take : {"curve", "tilt"}) {
            const Folder folder;
            const std::string file = folder.file("new.json");
            const Ran run = curve({kSteep, "--take", take, "--json", "-", "-o", file});
            INFO(run.err);
            REQUIRE(run.status == 0);
            const json out = json::parse(run.out);
            const std::string best = std::string("best_") + take;
            const json& taken = out.at(std::string(take) + "s").at(out.at(best).get<std::size_t>());
            const json now = json::parse(curve({file, "--json", "-"}).out).at("now");
            CHECK(now.at("radius_m") == taken.at("radius_m"));
            check_close(now.at("tilt_deg").get<double>(), taken.at("tilt_deg").get<double>(),
                        absolute(1e-12, "degrees through the file"));
            check_close(now.at("evenness").get<double>(), taken.at("evenness").get<double>(),
                        relative(1e-4, "its floor of equal clearance follows the picture's edge"));
        }
    }

    TEST_CASE("refuses: what it can't take, and to write over the layout that it reads") {
        CHECK(curve({kSteep, "--take", "both"}).status == 2);
        CHECK(curve({kSteep, "--format", "9.99"}).status == 2);
        const Ran over = curve({kSteep, "-o", kSteep});
        CHECK(over.status == 2);
        CHECK(has(over.err, "--force"));
    }
}
