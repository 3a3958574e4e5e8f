// SPDX-License-Identifier: MIT
// Bad screens, projectors and lenses through the command line: a file that can't be is refused with
// field, line and mend; a valid question without a picture is a finding, and the study stands.
#include "command/running.hpp"
#include "room/layout_file.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;
using nlohmann::ordered_json;

namespace {

ordered_json hall_json() {
    auto json = ordered_json::parse(room::write_layout(demo_brief("converted-hall-96")->layout));
    json["limits_file"] = RAKELINE_SOURCE_DIR "/layouts/practice/theatre.json";
    return json;
}

/// A layout's text in which one value is written as `token`, and the line that it stands on.
struct Spoilt {
    std::string text;
    std::size_t line = 0;
};

Spoilt spoilt(ordered_json json, const std::string& pointer, const std::string& token) {
    json[ordered_json::json_pointer(pointer)] = "@";
    Spoilt out{json.dump(1) + "\n"};
    const auto at = out.text.find("\"@\"");
    out.line = 1 + static_cast<std::size_t>(std::count(
                       out.text.begin(), out.text.begin() + static_cast<long>(at), '\n'));
    out.text.replace(at, 3, token);
    return out;
}

/// "/lenses/0/kind" as problems name it: "lenses[0].kind".
std::string field_of(const std::string& pointer) {
    std::string out;
    std::istringstream parts(pointer.substr(1));
    for (std::string part; std::getline(parts, part, '/');) {
        const bool index = part.find_first_not_of("0123456789") == std::string::npos;
        out += index ? "[" + part + "]" : (out.empty() ? "" : ".") + part;
    }
    return out;
}

struct BadField {
    std::string pointer;
    bool zero_is_bad;
};

/// Lengths, angles, counts and ratios that make the picture.
const BadField kFields[] = {
    {"/screen/width_m", true},
    {"/screen/height_m", true},
    {"/screen/sill_m", false},
    {"/screen/setback_m", false},
    {"/screen/radius_m", false},
    {"/screen/tilt_deg", false},
    {"/formats/0/aspect_ratio", true},
    {"/projectors/0/across_m", false},
    {"/projectors/0/up_m", false},
    {"/projectors/0/back_m", true},
    {"/projectors/0/aim/yaw_deg", false},
    {"/projectors/0/aim/pitch_deg", false},
    {"/projectors/0/aim/roll_deg", false},
    {"/projectors/0/port/across_m", false},
    {"/projectors/0/port/up_m", false},
    {"/projectors/0/port/width_m", true},
    {"/projectors/0/port/height_m", true},
    {"/projectors/0/port/glass_index", true},
    {"/projectors/0/lit_width_m", true},
    {"/projectors/0/lit_height_m", true},
    {"/projectors/0/imager/pixels_wide", true},
    {"/projectors/0/imager/pixel_pitch_m", true},
    {"/projectors/0/formats/0/gate_width_m", true},
    {"/projectors/0/formats/0/gate_height_m", true},
    {"/projectors/0/formats/0/squeeze", true},
    {"/projectors/0/formats/0/pixels_high", true},
    {"/projectors/0/formats/0/shift_up", false},
    {"/projectors/0/formats/0/shift_across", false},
    {"/lenses/0/focal_length_m", true},
    {"/lenses/0/focal_length_long_m", true},
    {"/lenses/0/f_number", true},
    {"/lenses/0/image_circle_m", true},
    {"/lenses/0/shift_up_max", false},
};

/// Refused with file, line, field and a mend behind a semicolon; nothing on standard output.
void check_refused(const Folder& folder, const Spoilt& bad, const std::string& field) {
    const std::string file = folder.write("room.json", bad.text);
    const Ran result = ran({"check", file});
    CHECK(result.status == 2);
    CHECK(result.out.empty());
    const std::string start = "room.json:" + std::to_string(bad.line) + ": " + field + ": ";
    CHECK(has(result.err, start));
    CHECK(has(result.err, "; "));
    CHECK(Folder::read(file) == bad.text);
}

Ran checked(const Folder& folder, const ordered_json& json) {
    return ran({"check", folder.write("room.json", json.dump(1))});
}

}  // namespace

TEST_SUITE("command/bad picture") {
    TEST_CASE("refuses: huge numbers, words and nothing in every field of the picture") {
        const Folder folder;
        const ordered_json hall = hall_json();
        for (const BadField& f : kFields) {
            for (const char* token : {"1e300", "-1e300", "1000000000", "\"wide\"", "null", "[]"}) {
                INFO(f.pointer, " as ", token);
                check_refused(folder, spoilt(hall, f.pointer, token), field_of(f.pointer));
            }
        }
    }

    TEST_CASE("refuses: sizes of zero") {
        const Folder folder;
        const ordered_json hall = hall_json();
        for (const BadField& f : kFields) {
            if (!f.zero_is_bad) continue;
            INFO(f.pointer);
            check_refused(folder, spoilt(hall, f.pointer, "0"), field_of(f.pointer));
        }
    }

    TEST_CASE("refuses: what JSON has no number for, at its line") {
        const Folder folder;
        const ordered_json hall = hall_json();
        for (const BadField& f : kFields) {
            for (const char* token : {"NaN", "nan", "Infinity", "-inf", "1e999", "0x10", "1,5"}) {
                INFO(f.pointer, " as ", token);
                const Spoilt bad = spoilt(hall, f.pointer, token);
                const std::string file = folder.write("room.json", bad.text);
                const Ran result = ran({"study", file});
                CHECK(result.status == 2);
                CHECK(result.out.empty());
                CHECK(has(result.err, "room.json:" + std::to_string(bad.line) + ": "));
                CHECK(Folder::read(file) == bad.text);
            }
        }
    }

    TEST_CASE("refuses: a zoom whose range is reversed, by field, line and mend") {
        const Folder folder;
        ordered_json hall = hall_json();
        ordered_json& lenses = hall["lenses"];
        const auto zoom = std::find_if(lenses.begin(), lenses.end(),
                                       [](const ordered_json& l) { return l["kind"] == "zoom"; });
        REQUIRE(zoom != lenses.end());
        const auto index = std::to_string(zoom - lenses.begin());
        const Spoilt bad = spoilt(hall, "/lenses/" + index + "/focal_length_long_m", "0.006");
        check_refused(folder, bad, "lenses[" + index + "].focal_length_long_m");
        for (const std::vector<std::string>& words :
             {std::vector<std::string>{"lens"}, {"study"}, {"check"}}) {
            auto all = words;
            all.push_back(folder.file("room.json"));
            const Ran result = ran(all);
            CHECK(result.status == 2);
            CHECK(has(result.err, "is shorter than its short end"));
            CHECK(has(result.err, "exchange the two"));
        }
    }

    TEST_CASE("refuses: a projector whose beam would start in a wall or under no port") {
        const Folder folder;
        const ordered_json hall = hall_json();
        const auto refused = [&](const char* pointer, const char* token, const char* says) {
            INFO(pointer);
            const Spoilt bad = spoilt(hall, pointer, token);
            check_refused(folder, bad, field_of(pointer));
            CHECK(has(ran({"check", folder.file("room.json")}).err, says));
        };
        refused("/projectors/0/across_m", "7", "stands beside the booth wall");
        refused("/projectors/0/up_m", "9", "stands above the hall's ceiling");
        refused("/projectors/0/back_m", "12", "its light passes no port");
        refused("/projectors/0/back_m", "1", "not behind the seats' side of the screen");
    }

    TEST_CASE("a projector that sees no screen is a finding, and the rest of the study stands") {
        const Folder folder;
        ordered_json hall = hall_json();
        hall["projectors"][0]["aim"] = {{"mode", "angles"}, {"yaw_deg", 60}};
        const std::string name = hall["projectors"][0]["name"];
        const Ran check = checked(folder, hall);
        CHECK(check.status == 1);
        CHECK(check.err.empty());
        CHECK(has(check.out, name + " gives no picture in 2.39: the picture falls wholly outside"));
        CHECK(has(check.out, "aim the projector at the screen"));
        const Ran study = ran({"study", folder.file("room.json")});
        CHECK(study.status == 0);
        CHECK(study.err.empty());
        const std::string other = hall["projectors"][1]["name"];
        for (const char* part :
             {"Throw ratio", "Luminance, reference", "C-value", "Direct level", "Seats"}) {
            CHECK(has(study.out, part));
        }
        CHECK(has(study.out, other));
        CHECK_FALSE(study.out.find(" nan") != std::string::npos);
        CHECK(has(ran({"lens", folder.file("room.json")}).out, "falls wholly outside"));
    }

    TEST_CASE("a beam that the wall cuts into is said of each lens") {
        const Folder folder;
        ordered_json hall = hall_json();
        hall["projectors"][0]["port"]["across_m"] = 3.5;
        const Ran lens = ran({"lens", folder.write("room.json", hall.dump(1)), "--projector",
                              hall["projectors"][0]["name"], "--format", "2.39", "--json", "-"});
        CHECK(lens.status == 0);
        const auto picks = ordered_json::parse(lens.out).at("picks");
        REQUIRE(picks.size() == 1);
        for (const auto& choice : picks[0].at("lenses")) {
            CHECK_FALSE(choice.at("fits").get<bool>());
            CHECK(choice.at("picture").at("port_margin_m").get<double>() < -1.0);
            CHECK(has(choice.at("faults").dump(), "port"));
        }
    }

    TEST_CASE("a beam through the wall is a finding on its projector alone, and the study stands") {
        const Folder folder;
        ordered_json hall = hall_json();
        const auto missed = [&](const std::string& projector) {
            const std::string out = checked(folder, hall).out;
            std::istringstream lines(out);
            int count = 0;
            for (std::string line; std::getline(lines, line);) {
                count += line.starts_with("missed") &&
                                 line.find("round the light of " + projector) != std::string::npos
                             ? 1
                             : 0;
            }
            return count;
        };
        const std::string name = hall["projectors"][0]["name"];
        const std::string other = hall["projectors"][1]["name"];
        const int before = missed(other);
        CHECK(missed(name) == 0);
        hall["projectors"][0]["port"]["across_m"] = 3.5;
        CHECK(missed(name) == static_cast<int>(hall["projectors"][0]["formats"].size()));
        CHECK(missed(other) == before);
        const Ran check = checked(folder, hall);
        CHECK(check.status == 1);
        CHECK(check.err.empty());
        CHECK(has(check.out, "Move the port or the projector"));
        const Ran study = ran({"study", folder.file("room.json")});
        CHECK(study.status == 0);
        for (const char* part : {"Throw ratio", "Luminance, reference", "C-value", "Direct level"})
            CHECK(has(study.out, part));
    }
}
