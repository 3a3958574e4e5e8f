// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

#include <nlohmann/json.hpp>

#include <filesystem>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

using namespace rakeline;
using namespace rakeline::room;
using nlohmann::json;
using valijson::adapters::NlohmannJsonAdapter;

namespace {

constexpr const char* kSchemaFile = RAKELINE_SOURCE_DIR "/layouts/layout.schema.json";
constexpr const char* kGeneratedFile = RAKELINE_BINARY_DIR "/layout.schema.json";

/// The first line in which two texts differ, both versions of it; empty if none does.
std::string first_difference(const std::string& a, const std::string& b) {
    const auto left = tests::lines_of(a);
    const auto right = tests::lines_of(b);
    for (std::size_t i = 0; i < std::max(left.size(), right.size()); ++i) {
        const std::string one = i < left.size() ? left[i] : "(no line)";
        const std::string other = i < right.size() ? right[i] : "(no line)";
        if (one != other) {
            return "line " + std::to_string(i + 1) + ":\n- " + one + "\n+ " + other;
        }
    }
    return {};
}

/// The generated schema, ready to hold documents against.
struct ParsedSchema {
    json document = json::parse(layout_schema());
    valijson::Schema schema;

    ParsedSchema() {
        valijson::SchemaParser(valijson::SchemaParser::kDraft7)
            .populateSchema(NlohmannJsonAdapter(document), schema);
    }
};

/// What the schema says against a document; empty if it suits.
std::string objections(const json& document) {
    static const ParsedSchema parsed;
    valijson::Validator validator;
    valijson::ValidationResults results;
    validator.validate(parsed.schema, NlohmannJsonAdapter(document), &results);
    std::string out;
    valijson::ValidationResults::Error error;
    while (results.popError(error)) {
        for (const std::string& step : error.context)
            out += step;
        out += ": " + error.description + "\n";
    }
    return out;
}

json valid_document() {
    return json::parse(write_layout(tests::valid_room()));
}

}  // namespace

TEST_SUITE("room/layout_schema") {
    TEST_CASE("layouts/layout.schema.json is the generated text") {
        // The text as it should be lies in the build folder, to look at and to copy.
        REQUIRE(base::write_file(kGeneratedFile, layout_schema()).empty());
        const auto file = base::read_text_file(kSchemaFile);
        REQUIRE(file);
        INFO("- file, + generated (", kGeneratedFile, ")\n",
             first_difference(*file, layout_schema()));
        CHECK(*file == layout_schema());
    }

    TEST_CASE("the schema takes what this program writes and the demo rooms") {
        CHECK(objections(valid_document()) == "");
        CHECK(objections(json::parse(write_layout(Layout{}))) == "");
        int rooms = 0;
        for (const auto& entry :
             std::filesystem::directory_iterator(RAKELINE_SOURCE_DIR "/layouts")) {
            const std::string path = entry.path().string();
            if (!path.ends_with(".json") || path.ends_with("schema.json")) continue;
            INFO(path);
            const auto text = base::read_text_file(path);
            REQUIRE(text);
            CHECK(objections(json::parse(*text)) == "");
            ++rooms;
        }
        CHECK(rooms >= 3);
    }

    TEST_CASE("refuses: what the reader refuses by a field's own rule, the schema refuses too") {
        const std::pair<const char*, json> wrong[] = {
            {"/rakeline_layout", 2},
            {"/hall/width_m", 1.9},
            {"/hall/width_m", "12"},
            {"/hall/splay_deg", 30.5},
            {"/hall/heigth_m", 5},
            {"/hall/floor", "by_steps"},
            {"/hall/floor_profile", 3},
            {"/screen/tilt_deg", -20.1},
            {"/screen/surface/gain_includes_perforation", 1},
            {"/seating/0/rows", 2.5},
            {"/seating/0/rows", 201},
            {"/seating/0/aisles/0/width_m", 0.2},
            {"/projectors/0/formats/0/lens", 4},
            {"/name", nullptr},
        };
        for (const auto& [path, value] : wrong) {
            INFO(path, " = ", value.dump());
            json document = valid_document();
            document[json::json_pointer(path)] = value;
            CHECK(objections(document) != "");
            CHECK_FALSE(read_layout(document.dump(), "x"));
        }
        json headless = valid_document();
        headless.erase("rakeline_layout");
        CHECK(objections(headless) != "");
    }

    TEST_CASE("bounds stand in file units") {
        const json document = json::parse(layout_schema());
        const json& tilt = document["properties"]["screen"]["properties"]["tilt_deg"];
        CHECK(tilt["minimum"] == -20);
        CHECK(tilt["maximum"] == 20);
        CHECK(tests::contains(tilt["description"], "Unit: deg."));
    }
}
