// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "room/document_root.hpp"
#include "room/field_reader.hpp"
#include "room/random_fields.hpp"
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

#include <filesystem>

using namespace rakeline;
using namespace rakeline::room;
using tests::contains;
using tests::only_problem;
using tests::problems_of;

namespace {

/// Checks the file and line, and parts of what and mend.
void check_said(const std::string& text, int line, const tests::Refusal& expected) {
    const base::Problem found = only_problem(text);
    INFO(base::text(found));
    CHECK(found.file == tests::kFile);
    CHECK(found.line == line);
    CHECK(found.where == expected.where);
    CHECK(contains(found.what, expected.what));
    CHECK(contains(found.mend, expected.mend));
}

/// The fields alone, since random rooms break the rules between them.
Layout read_without_rules(const std::string& text) {
    ProblemList problems("random");
    const auto root = document_root(text, "random", kLayoutHead, problems);
    REQUIRE(root);
    Layout layout;
    read_fields(*root, kLayoutHead, problems, [&](auto& v) { describe(v, layout); });
    INFO(base::text(ProblemList(problems).take()));
    CHECK(problems.empty());
    return layout;
}

std::vector<std::string> demo_rooms() {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(RAKELINE_SOURCE_DIR "/layouts")) {
        const std::string name = entry.path().filename().string();
        if (name.ends_with(".json") && name != "layout.schema.json") {
            paths.push_back(entry.path().string());
        }
    }
    return paths;
}

}  // namespace

TEST_SUITE("room/layout_file") {
    TEST_CASE("a file with nothing but its version is the default room") {
        const auto layout = read_layout(R"({"rakeline_layout": 1})", tests::kFile);
        REQUIRE(layout);
        CHECK(*layout == Layout{});
    }

    TEST_CASE("members that are missing keep their defaults, others are read in file units") {
        const auto layout = read_layout(R"({
            "rakeline_layout": 1.0,
            "name": "Зал",
            "screen": {"tilt_deg": 2.5, "masking": "four_way", "width_m": 9e0},
            "hall": {"humidity_fraction": 0.4},
            "seating": [{"rows": 3.0, "staggered": true}]
        })",
                                        tests::kFile);
        REQUIRE(layout);
        Layout expected;
        expected.name = "Зал";
        expected.screen.tilt_rad = base::radians(2.5);
        expected.screen.masking = MaskingMode::four_way;
        expected.screen.width_m = 9.0;
        expected.hall.humidity_fraction = 0.4;
        expected.seating.resize(1);
        expected.seating[0].rows = 3;
        expected.seating[0].staggered = true;
        CHECK(*layout == expected);
    }

    TEST_CASE("a byte order mark and a number before a line break don't shift lines") {
        const std::string text =
            "\xEF\xBB\xBF{\"rakeline_layout\":\n1\n,\n\"peak_level_db\": 200\n}";
        check_said(text, 4, {"peak_level_db", "200 dB is above the most allowed, 130 dB", "give"});
    }

    TEST_CASE("round trip: random rooms read back equal, every bit of them") {
        std::mt19937 random(20261124);
        for (int i = 0; i < 300; ++i) {
            INFO("room ", i, " of seed 20261124");
            Layout layout;
            tests::RandomFields fill(random);
            describe(fill, layout);
            const std::string text = write_layout(layout);
            const Layout read = read_without_rules(text);
            CHECK(read == layout);
            CHECK(write_layout(read) == text);
        }
    }

    TEST_CASE("round trip: the demo rooms read, and read back equal") {
        const auto paths = demo_rooms();
        CHECK(paths.size() >= 3);
        for (const std::string& path : paths) {
            INFO(path);
            const auto text = base::read_text_file(path);
            REQUIRE(text);
            const auto layout = read_layout(*text, path);
            INFO((layout ? "" : base::text(layout.problems())));
            REQUIRE(layout);
            const auto again = read_layout(write_layout(*layout), path);
            REQUIRE(again);
            CHECK(*again == *layout);
        }
    }

    TEST_CASE("the text starts with the version, two spaces a level, a line a member") {
        const std::string text = write_layout(Layout{});
        CHECK(text.starts_with("{\n  \"rakeline_layout\": 1,\n  \"name\": \"Untitled room\",\n"));
        CHECK(contains(text, "\n  \"hall\": {\n    \"width_m\": 12,\n    \"length_m\": 20,\n"));
        CHECK(contains(text, "\n  \"formats\": [],\n"));
        CHECK(contains(text, "\n      \"half_gain_angle_deg\": 40,\n"));
        CHECK(text.ends_with("\n    \"house_curve\": \"x_curve\"\n  }\n}\n"));
        CHECK(write_layout(tests::valid_room()) == write_layout(tests::valid_room()));
    }

    TEST_CASE("an optional number that is unset is left out") {
        Layout layout = tests::valid_room();
        CHECK_FALSE(contains(write_layout(layout), "opening_width_m"));
        layout.formats[1].opening_width_m = 8.125;
        CHECK(contains(write_layout(layout), "\"opening_width_m\": 8.125\n"));
    }

    TEST_CASE("refuses: text that ends in the middle") {
        check_said("{\"rakeline_layout\": 1,\n\"hall\": {", 2,
                   {"", "the text ends in the middle", "cut short"});
        check_said("{\"rakeline_layout\": 1,\n\"name\": \"ab", 2,
                   {"", "the text ends in the middle", "cut short"});
        check_said("", 0, {"", "is empty", "name a file"});
        check_said(" \n\t", 0, {"", "is empty", "name a file"});
    }

    TEST_CASE("refuses: broken JSON, with line and column") {
        check_said("{\"rakeline_layout\": 1,\n  \"name\" \"x\"}", 2,
                   {"", "is no JSON at column", "comma, quote or bracket"});
        CHECK(contains(only_problem("{\"rakeline_layout\": 1,\n  ?}").what, "at column 3, at '?'"));
        check_said("{\"rakeline_layout\": 1,}", 1, {"", "is no JSON at column 23, at '}'", "look"});
        check_said("{\"rakeline_layout\": 1} x", 1,
                   {"", "is no JSON at column 24, at 'x'", "look"});
        check_said("{\"rakeline_layout\": 01}", 1, {"", "is no JSON", "look"});
    }

    TEST_CASE("refuses: NaN, infinities and numbers beyond a double") {
        const auto with = [](const char* value) {
            return std::string("{\"rakeline_layout\": 1,\n\"hall\": {\n\"width_m\": ") + value +
                   "}}";
        };
        check_said(with("NaN"), 3, {"", "NaN is not a number that a file can hold", "write"});
        check_said(with("nan"), 3, {"", "nan is not a number that a file can hold", "write"});
        check_said(with("Infinity"), 3, {"", "Infinity is not a number", "write"});
        check_said(with("-Infinity"), 3, {"", "-Infinity is not a number", "write"});
        check_said(with("1e999"), 3, {"", "1e999 is too large for a number", "smaller"});
        check_said(with("-1e999"), 3, {"", "-1e999 is too large for a number", "smaller"});
    }

    TEST_CASE("refuses: text that is not UTF-8") {
        check_said("{\"rakeline_layout\": 1,\n\"name\": \"caf\xe9\"}", 2,
                   {"", "is not UTF-8 text at column 13", "UTF-8 encoding"});
        check_said("{\"name\": \"\xed\xa0\x80\"}", 1, {"", "is not UTF-8", "UTF-8"});
        check_said("{\"name\": \"\xc0\xaf\"}", 1, {"", "is not UTF-8", "UTF-8"});
        check_said("{\"name\": \"\xf4\x90\x80\x80\"}", 1, {"", "is not UTF-8", "UTF-8"});
        check_said("{\"name\": \"\xe2\x82", 1, {"", "is not UTF-8", "UTF-8"});
    }

    TEST_CASE("refuses: doubled keys, beside whatever else is wrong") {
        const auto problems = problems_of(
            "{\"rakeline_layout\": 1,\n\"seating\": [{}, {\"rows\": 2,\n\"name\": \"a\",\n"
            "\"rows\": 900}],\n\"name\": \"a\",\n\"name\": \"b\",\n\"peak_level_db\": 1}");
        INFO(base::text(problems));
        REQUIRE(problems.size() == 3);
        CHECK(problems[0].line == 4);
        CHECK(problems[0].where == "seating[1].rows");
        CHECK(problems[0].what == "stands twice, first on line 2");
        CHECK(problems[1].line == 6);
        CHECK(problems[1].where == "name");
        CHECK(problems[2].where == "peak_level_db");
    }

    TEST_CASE("refuses: unknown keys, naming the nearest known one") {
        check_said("{\"rakeline_layout\": 1,\n\"hall\": {\n\"heigth_m\": 5}}", 3,
                   {"hall.heigth_m", "no member has this name", "did you mean height_m?"});
        check_said("{\"rakeline_layout\": 1,\n\"colour\": 5}", 2,
                   {"colour", "no member has this name", "take it out"});
        const std::string huge(200000, 'x');
        CHECK(only_problem("{\"rakeline_layout\": 1, \"" + huge + "\": 1}").where.size() < 60);
    }

    TEST_CASE("refuses: values of another type") {
        const auto with = [](const char* member) {
            return std::string("{\"rakeline_layout\": 1,\n\"seating\": [\n{") + member + "}]}";
        };
        check_said(with("\"rows\": \"8\""), 3,
                   {"seating[0].rows", "\"8\" is a text, not a number", "without quotes"});
        check_said(with("\"name\": 8.5"), 3,
                   {"seating[0].name", "8.5 is a number, not a text", "in quotes"});
        check_said(with("\"staggered\": 1"), 3,
                   {"seating[0].staggered", "1 is a number, not true or false", "true or false"});
        check_said(with("\"riser_m\": null"), 3,
                   {"seating[0].riser_m", "null is no value here, not a number", "leave"});
        check_said(with("\"aisles\": {}"), 3,
                   {"seating[0].aisles", "this is an object, not a list", "between [ and ]"});
        check_said(with("\"aisles\": [4]"), 3,
                   {"seating[0].aisles[0]", "4 is a number, not an object", "between { and }"});
        check_said(with("\"floor\": true"), 3,
                   {"seating[0].floor", "true is no value here, not a text", "in quotes"});
        check_said("{\"rakeline_layout\": 1,\n\"hall\": []}", 2,
                   {"hall", "this is a list, not an object", "between { and }"});
        check_said("[]", 1, {"", "this is a list, not an object", "between { and }"});
    }

    TEST_CASE("refuses: a choice that does not exist") {
        check_said("{\"rakeline_layout\": 1,\n\"seating\": [\n{\"floor\": \"steps\"}]}", 3,
                   {"seating[0].floor", "\"steps\" is none of its choices",
                    "write level, slope, stepped, equal_clearance or flights"});
    }

    TEST_CASE("refuses: values out of range, in the file's own unit") {
        const auto with = [](const char* members) {
            return std::string("{\"rakeline_layout\": 1,\n") + members + "}";
        };
        check_said(with("\"hall\": {\"width_m\": -3}"), 2,
                   {"hall.width_m", "-3 m is below the least allowed, 2 m", "give 2 m to 100 m"});
        check_said(with("\"screen\": {\"tilt_deg\": 20.001}"), 2,
                   {"screen.tilt_deg", "20.001 deg is above the most allowed, 20 deg",
                    "give -20 deg to 20 deg"});
        check_said(with("\"lenses\": [{\"name\": \"a\", \"focal_length_m\": 0}]"), 2,
                   {"lenses[0].focal_length_m", "0 m is below the least allowed, 0.005 m",
                    "the file holds metres: 50 mm is 0.05"});
        check_said(with("\"hall\": {\"humidity_fraction\": 50}"), 2,
                   {"hall.humidity_fraction", "50 is above the most allowed, 1",
                    "the file holds fractions: 50 % is 0.5"});
        check_said(with("\"hall\": {\"humidity_fraction\": 0}"), 2,
                   {"hall.humidity_fraction", "0 is below the least allowed, 0.01", "give 0.01"});
        check_said(
            with("\"loudspeakers\": [\n{\"name\": \"C\", \"back_m\": -0.1}]"), 3,
            {"loudspeakers[0].back_m", "-0.1 m is below the least allowed, 0 m", "give 0 m"});
        check_said(with("\"seating\": [{\"rows\": 2.5}]"), 2,
                   {"seating[0].rows", "2.5 is no whole number", "from 1 to 200"});
        check_said(with("\"seating\": [{\"rows\": 99999999999999999999}]"), 2,
                   {"seating[0].rows", "is above the most allowed, 200", "from 1 to 200"});
        check_said(with("\"seating\": [{\"rows\": -18446744073709551616}]"), 2,
                   {"seating[0].rows", "is below the least allowed, 1", "from 1 to 200"});
        check_said(with("\"name\": \"a\\u0000b\""), 2,
                   {"name", "holds a control character", "take it out"});
        check_said(with(("\"note\": \"" + std::string(10001, 'x') + "\"").c_str()), 2,
                   {"note", "a text of 10001 bytes is too long", "10000"});
    }

    TEST_CASE("the ends of every range belong to it") {
        const auto ends = read_layout(
            R"({"rakeline_layout": 1, "screen": {"tilt_deg": -20, "setback_m": 3},
                "hall": {"splay_deg": 30, "length_m": 150, "width_m": 100}})",
            tests::kFile);
        INFO((ends ? "" : base::text(ends.problems())));
        REQUIRE(ends);
        CHECK(ends->screen.tilt_rad == base::radians(-20.0));
    }

    TEST_CASE("refuses: lists longer than they may be") {
        std::string items = "{}";
        for (int i = 0; i < 40; ++i)
            items += ",{}";
        check_said("{\"rakeline_layout\": 1,\n\"seating\": [" + items + "]}", 2,
                   {"seating", "41 entries are more than a room may have", "40 at most"});
    }

    TEST_CASE("refuses: nesting deeper than any file of ours, and far too many values") {
        const std::string deep(200000, '[');
        check_said("{\"rakeline_layout\": 1, \"hall\": " + deep, 1,
                   {"", "is nested deeper than 32 levels", "6 at most"});
        std::string many = "0";
        for (int i = 0; i < 200001; ++i)
            many += ",0";
        check_said("{\"rakeline_layout\": 1, \"hall\": [" + many + "]}", 1,
                   {"", "holds more than 200000 values", "far smaller"});
    }

    TEST_CASE("refuses: other versions and other files") {
        check_said("{\n\"rakeline_layout\": 2}", 2,
                   {"rakeline_layout", "version 2 is newer than version 1", "newer program"});
        check_said("{\n\"rakeline_layout\": 0}", 2,
                   {"rakeline_layout", "version 0 never was", "write 1"});
        check_said("{\n\"rakeline_layout\": \"1\"}", 2,
                   {"rakeline_layout", "\"1\" is a text, not a number", "write 1"});
        check_said("{\"name\": \"a\"}", 1,
                   {"rakeline_layout", "is missing, so this is not a layout of ours",
                    "\"rakeline_layout\": 1"});
        check_said("{\"rakeline_limits\": 1}", 1,
                   {"", "this file is a set of limits, not a layout", "another file"});
    }

    TEST_CASE("refuses: fifty at once, and says how many more there are") {
        std::string text = "{\"rakeline_layout\": 1";
        for (int i = 0; i < 70; ++i)
            text += ",\n\"wrong" + std::to_string(i) + "\": 1";
        const auto problems = problems_of(text + "}");
        REQUIRE(problems.size() == 51);
        CHECK(problems[0].where == "wrong0");
        CHECK(problems[49].where == "wrong49");
        CHECK(base::text(problems[50]) ==
              "rooms/x.json: and 20 more problems; mend the ones above first");
    }

    TEST_CASE("a problem prints as one line that an editor can follow") {
        const auto problem = only_problem(
            "{\"rakeline_layout\": 1,\n\"screen\": {\"width_m\": 12,\n\"radius_m\": 3.2}}");
        CHECK(base::text(problem) ==
              "rooms/x.json:3: screen.radius_m: 3.2 m is less than half the picture width 12 m; "
              "use 0 for a flat screen or at least 6.1 m");
    }
}
