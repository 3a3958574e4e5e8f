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
const std::string kGrand = demo_path("grand-620");

Ran rake(std::vector<std::string> words) {
    words.insert(words.begin(), "rake");
    return ran(words);
}

}  // namespace

TEST_SUITE("command/rake_verb") {
    TEST_CASE("rake prints risers, C after each restriction, what each costs, and cautions") {
        const Ran all = rake({kGrand, "--block", "stalls", "--flight", "3", "--riser-most",
                              "0.15 m", "--slope-most", "6"});
        CHECK(all.status == 1);
        CHECK(all.err.empty());
        for (const char* part :
             {"floor of stalls, wanted C 80.0 mm", "can't be built: the greatest riser",
              "Exact riser mm", "C slope mm", "rows grouped in flights", "costs in C mm",
              "local building and fire codes"}) {
            CHECK(has(all.out, part));
        }
        const Ran good = rake({kSteep});
        CHECK(good.status == 0);
        CHECK(has(good.out, "Every row has its wanted C of 150.0 mm"));
    }

    TEST_CASE("rake in imperial units takes half inches and prints inches") {
        const Ran run = rake({kSteep, "--imperial", "--c", "120 mm"});
        CHECK(run.status == 0);
        CHECK(has(run.out, "wanted C 4.724 in"));
        const json metric = json::parse(rake({kSteep, "--c", "4.72 in", "--json", "-"}).out);
        check_close(metric.at("wanted_c_m").get<double>(), 4.72 * 0.0254,
                    relative(1e-12, "rounding"));
        const json out = json::parse(rake({kSteep, "--imperial", "--json", "-"}).out);
        for (const json& row : out.at("rows")) {
            if (!row.contains("riser_m")) continue;
            const double halves = row.at("riser_m").get<double>() / 0.0127;
            check_close(halves, std::round(halves), absolute(1e-9, "whole half inches"));
        }
    }

    TEST_CASE("round trip: rake -o writes a layout whose study has the C that it reports") {
        const Folder folder;
        const std::string file = folder.file("new.json");
        const Ran run = rake({kSteep, "--flight", "2", "--json", "-", "-o", file});
        CHECK(run.status == 0);
        const json out = json::parse(run.out);
        const Ran study = ran({"study", file, "--json", "-"});
        REQUIRE(study.status == 0);
        std::vector<double> least(out.at("rows").size(), 1e9);
        const json studied = json::parse(study.out);
        for (const json& figure : studied.at("figures")) {
            if (figure.at("id") != "sight.c_value") continue;
            for (std::size_t n = 0; n < least.size(); ++n) {
                const auto value = figure.at("values").find(out.at("rows")[n].at("row"));
                if (value != figure.at("values").end())
                    least[n] = std::min(least[n], value->get<double>());
            }
        }
        for (std::size_t n = 1; n < least.size(); ++n) {
            check_close(least[n], out.at("rows")[n].at("c_m").get<double>(),
                        absolute(1e-10, "risers are kept to the picometre"));
        }
    }

    TEST_CASE("rake finds sill and spacing, and writes them too") {
        const Folder folder;
        const std::string file = folder.file("sill.json");
        const Ran sill = rake({kHall, "--sill", "--c", "60", "--json", "-", "-o", file});
        CHECK(sill.status == 0);
        const double value = json::parse(sill.out).at("sill_m");
        const auto read = room::read_layout(Folder::read(file), file);
        REQUIRE(read);
        CHECK(read->screen.sill_m == value);
        CHECK(has(rake({kHall, "--sill"}).out, "Lowest sill for C 120.0 mm"));
        const Ran spacing = rake({kHall, "--spacing", "--c", "60 mm"});
        CHECK(spacing.status == 0);
        CHECK(has(spacing.out, "Row spacing for C 60.0 mm"));
        CHECK(rake({kScreening, "--spacing"}).status == 1);
        CHECK_FALSE(
            json::parse(rake({kScreening, "--spacing", "--json", "-"}).out).contains("least"));
    }

    TEST_CASE("refuses: bad words, and nothing is written") {
        const Folder folder;
        const std::string file = folder.file("new.json");
        const std::vector<std::vector<std::string>> bad = {
            {kSteep, "--c", "tall"},
            {kSteep, "--c", "3 kg"},
            {kSteep, "--c", "2 m"},
            {kSteep, "--riser-step", "0"},
            {kSteep, "--riser-step", "-5 mm"},
            {kSteep, "--flight", "0"},
            {kSteep, "--flight", "x"},
            {kSteep, "--flights-most", "0"},
            {kSteep, "--slope-most", "80"},
            {kSteep, "--headroom", "-1"},
            {kSteep, "--step-most", "1 mm"},
            {kSteep, "--block", "no such"},
            {kSteep, "--sill", "--spacing"},
            {kGrand},
            {"no-such.json"},
        };
        for (std::vector<std::string> words : bad) {
            INFO(words.back());
            words.insert(words.end(), {"-o", file});
            const Ran run = rake(words);
            CHECK(run.status == 2);
            CHECK(run.out.empty());
            CHECK_FALSE(run.err.empty());
            CHECK_FALSE(fs::exists(file));
        }
        CHECK(has(rake({kSteep, "--c", "2 m"}).err, "--c"));
        CHECK(has(rake({kGrand}).err, "name one with --block: 'stalls', 'balcony'"));
    }

    TEST_CASE("refuses: to write over the layout that is read, unless told to") {
        const Folder folder;
        const std::string limits = folder.write(
            "limits.json",
            Folder::read(std::string(RAKELINE_SOURCE_DIR) + "/layouts/practice/theatre.json"));
        auto layout = demo_brief("steep-240")->layout;
        layout.limits_file = limits;
        const std::string file = folder.write("own.json", room::write_layout(layout));
        const std::string before = Folder::read(file);
        const Ran refused = rake({file, "-o", file});
        CHECK(refused.status == 2);
        CHECK(has(refused.err, "--force"));
        CHECK(Folder::read(file) == before);
        CHECK(rake({file, "-o", file, "--force"}).status == 0);
        CHECK(has(Folder::read(file), "\"flights\""));
    }

    TEST_CASE("where nothing can be built, nothing is written and the row is named") {
        const Folder folder;
        const std::string file = folder.file("new.json");
        const Ran run = rake({kSteep, "--headroom", "20 m", "-o", file});
        CHECK(run.status == 1);
        CHECK(has(run.out, "Nothing can be built: row B lacks the headroom"));
        CHECK_FALSE(fs::exists(file));
    }
}
