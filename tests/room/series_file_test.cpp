// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "base/units.hpp"
#include "room/refusal.hpp"

#include <filesystem>

using namespace rakeline;
using namespace rakeline::room;

TEST_SUITE("room/series_file") {
    TEST_CASE("lenses, surfaces and loudspeakers are read as a layout's are") {
        const auto series = read_series(R"({
            "rakeline_series": 1, "name": "generic", "note": "invented",
            "lenses": [{"name": "zoom", "kind": "zoom", "focal_length_m": 0.03,
                        "focal_length_long_m": 0.05}],
            "surfaces": [{"name": "pearl", "lobe": "mirror", "peak_gain": 1.4,
                          "matte_gain": 0.6, "half_gain_angle_deg": 45}],
            "loudspeakers": [{"name": "horn", "coverage_across_deg": 90, "power_w": 300}]
        })",
                                        "series/x.json");
        REQUIRE(series);
        CHECK(series->name == "generic");
        CHECK(series->note == "invented");
        REQUIRE(series->lenses.size() == 1);
        CHECK(series->lenses[0].kind == LensKind::zoom);
        CHECK(series->lenses[0].focal_length_long_m == 0.05);
        REQUIRE(series->surfaces.size() == 1);
        CHECK(series->surfaces[0].lobe == LobeKind::mirror);
        CHECK(series->surfaces[0].half_gain_angle_rad == base::radians(45.0));
        REQUIRE(series->loudspeakers.size() == 1);
        CHECK(series->loudspeakers[0].power_w == 300.0);
    }

    TEST_CASE("refuses: the faults of single entries and doubled names, each with its line") {
        const auto series = read_series(
            "{\"rakeline_series\": 1, \"name\": \"generic\",\n"
            "\"lenses\": [{\"name\": \"a\", \"kind\": \"zoom\",\n"
            "\"focal_length_m\": 0.05, \"focal_length_long_m\": 0.04},\n"
            "{\"name\": \"a\"}],\n"
            "\"surfaces\": [{\"name\": \"s\", \"lobe\": \"retro\",\n\"peak_gain\": 0.9}]}",
            "series/x.json");
        REQUIRE_FALSE(series);
        const base::Problems& found = series.problems();
        INFO(base::text(found));
        REQUIRE(found.size() == 3);
        CHECK(found[0].where == "lenses[0].focal_length_long_m");
        CHECK(found[0].line == 3);
        CHECK(found[1].where == "lenses[1].name");
        CHECK(found[1].line == 4);
        CHECK(found[2].where == "surfaces[0].peak_gain");
        CHECK(found[2].line == 6);
    }

    TEST_CASE(
        "sheets are read as a screen's perforation is, and one whose holes overlap is refused") {
        const auto series = read_series(R"({"rakeline_series": 1, "sheets": [{"name": "micro",
            "perforation": {"pattern": "staggered", "hole_diameter_m": 0.0004, "pitch_m": 0.0016},
            "sheet_thickness_m": 0.00025, "sheet_mass_kg_m2": 0.31}]})",
                                        "series/x.json");
        REQUIRE(series);
        REQUIRE(series->sheets.size() == 1);
        CHECK(series->sheets[0].perforation.pattern == PerforationPattern::staggered);
        CHECK(series->sheets[0].perforation.pitch_m == 0.0016);
        CHECK(series->sheets[0].thickness_m == 0.00025);
        CHECK(series->sheets[0].mass_kg_m2 == 0.31);
        const auto touching = read_series(
            "{\"rakeline_series\": 1, \"sheets\": [{\"name\": \"micro\", \"perforation\":\n"
            "{\"pattern\": \"square\", \"pitch_m\": 0.001,\n\"hole_diameter_m\": 0.001}}]}",
            "series/x.json");
        REQUIRE_FALSE(touching);
        REQUIRE(touching.problems().size() == 1);
        CHECK(touching.problems().front().where == "sheets[0].perforation.hole_diameter_m");
        CHECK(touching.problems().front().line == 3);
    }

    TEST_CASE("refuses: measured coverage of a catalogue's loudspeaker that does not rise") {
        const auto series = read_series(
            "{\"rakeline_series\": 1, \"loudspeakers\": [{\"name\": \"horn\",\n"
            "\"coverage_table\": [{\"frequency_hz\": 2000},\n{\"frequency_hz\": 1000}]}]}",
            "series/x.json");
        REQUIRE_FALSE(series);
        REQUIRE(series.problems().size() == 1);
        CHECK(series.problems()[0].where == "loudspeakers[0].coverage_table[1].frequency_hz");
        CHECK(series.problems()[0].line == 3);
    }

    TEST_CASE("refuses: values out of range, and a layout in the place of a catalogue") {
        const auto zero = read_series(
            R"({"rakeline_series": 1, "lenses": [{"name": "a", "f_number": 0}]})", "series/x.json");
        REQUIRE_FALSE(zero);
        CHECK(zero.problems().front().where == "lenses[0].f_number");
        const auto layout = read_series(R"({"rakeline_layout": 1})", "series/x.json");
        REQUIRE_FALSE(layout);
        CHECK(base::text(layout.problems().front()) ==
              "series/x.json:1: this file is a layout, not a catalogue of series; name another "
              "file");
    }

    TEST_CASE("every file in layouts/series reads") {
        int files = 0;
        for (const auto& entry :
             std::filesystem::directory_iterator(RAKELINE_SOURCE_DIR "/layouts/series")) {
            const std::string path = entry.path().string();
            const auto text = base::read_text_file(path);
            REQUIRE(text);
            const auto read = read_series(*text, path);
            INFO((read ? path : base::text(read.problems())));
            CHECK(read);
            ++files;
        }
        CHECK(files >= 1);
    }
}
