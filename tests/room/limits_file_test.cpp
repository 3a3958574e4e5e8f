// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "base/units.hpp"
#include "room/refusal.hpp"
#include "support/check.hpp"

#include <filesystem>

using namespace rakeline;
using namespace rakeline::room;
using tests::contains;

namespace {

/// A set with one limit, of which `replace` takes the place of a member or joins the others.
std::string with_limit(const std::string& members) {
    return "{\"rakeline_limits\": 1,\n\"name\": \"a set\",\n\"limits\": [{\n" + members + "}]}";
}

const std::string kGood =
    R"("figure": "light.luminance", "unit": "cd/m2", "least": 38, "authority": "yours",
       "source": "house rule")";

struct Said {
    int line;
    std::string where;
    std::string what;
};

void check_refused_as(const std::string& text, const Said& expected) {
    const auto result = read_limits(text, "practice/x.json");
    REQUIRE_FALSE(result);
    INFO(base::text(result.problems()));
    REQUIRE(result.problems().size() == 1);
    const base::Problem& found = result.problems().front();
    CHECK(found.file == "practice/x.json");
    CHECK(found.line == expected.line);
    CHECK(found.where == expected.where);
    CHECK(contains(found.what, expected.what));
    CHECK_FALSE(found.mend.empty());
}

/// The first limit of a text that reads.
Limit limit_of(const std::string& members) {
    const auto set = read_limits(with_limit(members), "practice/x.json");
    INFO((set ? "" : base::text(set.problems())));
    REQUIRE(set);
    REQUIRE(set->limits.size() == 1);
    return set->limits.front();
}

/// `kGood` with one piece of text exchanged.
std::string good_but(const std::string& piece, const std::string& other) {
    std::string text = kGood;
    const auto at = text.find(piece);
    REQUIRE(at != std::string::npos);
    return text.replace(at, piece.size(), other);
}

}  // namespace

TEST_SUITE("room/limits_file") {
    TEST_CASE("every member of a limit is read") {
        const Limit limit = limit_of(
            R"("figure": "sound.screen_loss", "scope": "last_row", "source_kind": "digital",
               "band_hz": 8000, "least": 1, "most": 6.5, "near": 0.5, "unit": "dB",
               "authority": "standard", "source": "a standard, clause 4", "mend": "thinner sheet")");
        Limit expected;
        expected.figure = "sound.screen_loss";
        expected.scope = LimitScope::last_row;
        expected.source_kind = SourceKind::digital;
        expected.band_hz = 8000.0;
        expected.least = 1.0;
        expected.most = 6.5;
        expected.near = 0.5;
        expected.authority = Authority::standard;
        expected.source = "a standard, clause 4";
        expected.mend = "thinner sheet";
        CHECK(limit == expected);
    }

    TEST_CASE("what is left out is: every value, both kinds, all bands, no mend") {
        const Limit limit = limit_of(kGood);
        CHECK(limit.scope == LimitScope::every);
        CHECK_FALSE(limit.source_kind);
        CHECK_FALSE(limit.band_hz);
        CHECK_FALSE(limit.most);
        CHECK(limit.near == 0.0);
        CHECK(limit.mend.empty());
    }

    TEST_CASE("bounds come back in SI from the unit that they stand in") {
        const auto most_of = [](const char* unit) {
            return *limit_of(good_but("\"unit\": \"cd/m2\", \"least\": 38",
                                      std::string("\"unit\": \"") + unit +
                                          "\", \"most\": 36, \"near\": 3"))
                        .most;
        };
        CHECK(most_of("deg") == base::radians(36.0));
        CHECK(most_of("%") == 0.36);
        for (const char* unit : {"m", "cd/m2", "dB", "s", "lm", "1"}) {
            INFO(unit);
            CHECK(most_of(unit) == 36.0);
        }
        const Limit degrees =
            limit_of(good_but("\"unit\": \"cd/m2\"", "\"unit\": \"deg\", \"near\": 1"));
        CHECK(degrees.near == base::radians(1.0));
    }

    TEST_CASE("an empty list of limits holds a room against nothing") {
        const auto set =
            read_limits(R"({"rakeline_limits": 1, "name": "n", "note": "t", "limits": []})", "f");
        REQUIRE(set);
        CHECK(*set == LimitSet{"n", "t", {}});
    }

    TEST_CASE("refuses: what a limit can't do without") {
        check_refused_as(with_limit(good_but("\"figure\": \"light.luminance\",", "")),
                         {3, "limits[0].figure", "is missing"});
        check_refused_as(with_limit(good_but("\"light.luminance\"", "\"\"")),
                         {4, "limits[0].figure", "is empty"});
        check_refused_as(with_limit(good_but("\"authority\": \"yours\",", "")),
                         {3, "limits[0].authority", "is missing"});
        check_refused_as(with_limit(good_but(",\n       \"source\": \"house rule\"", "")),
                         {3, "limits[0].source", "is missing"});
        check_refused_as(with_limit(good_but("\"house rule\"", "\"\"")),
                         {5, "limits[0].source", "is empty"});
        check_refused_as(with_limit(good_but("\"unit\": \"cd/m2\",", "")),
                         {3, "limits[0].unit", "is missing"});
        check_refused_as(with_limit(good_but("\"least\": 38,", "")),
                         {3, "limits[0].least", "so nothing is bounded"});
        check_refused_as("{\"rakeline_limits\": 1, \"limits\": []}", {1, "name", "is missing"});
        check_refused_as("{\"rakeline_limits\": 1, \"name\": \"n\"}", {1, "limits", "is missing"});
    }

    TEST_CASE("refuses: values that mean nothing") {
        check_refused_as(with_limit(good_but("yours", "mine")),
                         {4, "limits[0].authority", "\"mine\" is none of its choices"});
        check_refused_as(with_limit(good_but("\"cd/m2\"", "\"fL\"")),
                         {4, "limits[0].unit", "\"fL\" is none of its choices"});
        check_refused_as(with_limit(good_but("38", "\"38\"")),
                         {4, "limits[0].least", "is a text, not a number"});
        check_refused_as(with_limit(good_but("38", "38, \"most\": 37.5")),
                         {4, "limits[0].least", "is above most"});
        check_refused_as(with_limit(good_but("38", "38, \"near\": -1")),
                         {4, "limits[0].near", "is negative"});
        check_refused_as(with_limit(good_but("38", "38, \"band_hz\": 0")),
                         {4, "limits[0].band_hz", "0 Hz is no audible band"});
        check_refused_as(with_limit(good_but("38", "38, \"scope\": \"row\"")),
                         {4, "limits[0].scope", "\"row\" is none of its choices"});
        check_refused_as(with_limit(good_but("38", "38, \"source_kind\": \"tape\"")),
                         {4, "limits[0].source_kind", "\"tape\" is none of its choices"});
        check_refused_as(with_limit(good_but("38", "38, \"leest\": 4")),
                         {4, "limits[0].leest", "no member has this name"});
        check_refused_as("{\"rakeline_limits\": 1,\n\"name\": \"n\",\n\"limits\": [\n7]}",
                         {4, "limits[0]", "7 is a number, not an object"});
        check_refused_as("{\"rakeline_layout\": 1}", {1, "", "this file is a layout"});
        check_refused_as("{\"rakeline_limits\": 2}", {1, "rakeline_limits", "version 2 is newer"});
    }

    TEST_CASE("every file in layouts/practice reads") {
        int files = 0;
        for (const auto& entry :
             std::filesystem::directory_iterator(RAKELINE_SOURCE_DIR "/layouts/practice")) {
            const std::string path = entry.path().string();
            const auto text = base::read_text_file(path);
            REQUIRE(text);
            const auto read = read_limits(*text, path);
            INFO((read ? path : base::text(read.problems())));
            CHECK(read);
            ++files;
        }
        CHECK(files >= 1);
    }
}
