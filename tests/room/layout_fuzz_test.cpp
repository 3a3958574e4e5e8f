// SPDX-License-Identifier: MIT
#include "base/files.hpp"
#include "room/random_fields.hpp"
#include "room/refusal.hpp"
#include "room/valid_room.hpp"

#include <random>

using namespace rakeline;
using namespace rakeline::room;
using tests::problems_of;

namespace {

constexpr const char* kDemo = RAKELINE_SOURCE_DIR "/layouts/converted-hall-96.json";

std::string demo_text() {
    const auto text = base::read_text_file(kDemo);
    REQUIRE(text);
    return *text;
}

/// Whether the text reads, or is refused with a file, a sentence and a mend in every problem.
bool answers(const std::string& text) {
    const auto result = read_layout(text, tests::kFile);
    if (result) return true;
    return std::ranges::all_of(result.problems(), [](const base::Problem& problem) {
        return problem.file == tests::kFile && !problem.what.empty() && !problem.mend.empty();
    });
}

/// A few bytes changed, taken out, doubled or put in; half of the time such that JSON may survive.
std::string mutated(std::string text, std::mt19937& random) {
    static constexpr std::string_view kLikely = "0123456789-.e\"{}[],:atrue \n";
    const auto below = [&](std::size_t n) {
        return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    for (std::size_t left = 1 + below(4); left > 0; --left) {
        const std::size_t at = below(text.size());
        const char likely = kLikely[below(kLikely.size())];
        const char any = static_cast<char>(below(256));
        switch (below(5)) {
            case 0:
                text[at] = likely;
                break;
            case 1:
                text[at] = any;
                break;
            case 2:
                text.erase(at, 1 + below(3));
                break;
            case 3:
                text.insert(at, 1, likely);
                break;
            default:
                text.insert(at, text.substr(below(text.size()), 1 + below(40)));
                break;
        }
    }
    return text;
}

}  // namespace

TEST_SUITE("room/layout_fuzz") {
    TEST_CASE(
        "property: every beginning of a file is refused, and none of them stops the program") {
        const std::string text = demo_text();
        const std::size_t whole = text.find_last_of('}');
        for (std::size_t size = 0; size <= whole; ++size) {
            const auto result = read_layout(text.substr(0, size), tests::kFile);
            const bool refused = !result && result.problems().front().file == tests::kFile;
            if (refused) continue;
            INFO("first ", size, " bytes");
            CHECK(refused);
        }
        CHECK(read_layout(text, tests::kFile));
    }

    TEST_CASE("property: 5000 damaged files either read or are refused in words") {
        const std::string text = demo_text();
        std::mt19937 random(7);
        int read = 0;
        for (int i = 0; i < 5000; ++i) {
            const std::string damaged = mutated(text, random);
            const bool answered = answers(damaged);
            if (!answered) MESSAGE(damaged);
            REQUIRE(answered);
            if (read_layout(damaged, tests::kFile)) ++read;
        }
        // Both outcomes must come up, or the damage is not of the kind that finds anything.
        CHECK(read > 50);
        CHECK(read < 4950);
    }

    TEST_CASE("property: whatever a part of the room holds, its rules name fields that exist") {
        std::mt19937 random(11);
        int clean = 0;
        for (int i = 0; i < 2000; ++i) {
            INFO("room ", i, " of seed 11");
            Layout layout = tests::valid_room();
            tests::RandomFields fill(random);
            switch (i % 6) {
                case 0:
                    describe(fill, layout.hall);
                    break;
                case 1:
                    describe(fill, layout.screen);
                    break;
                case 2:
                    describe(fill, layout.projectors[0]);
                    break;
                case 3:
                    describe(fill, layout.seating[1]);
                    break;
                case 4:
                    describe(fill, layout.loudspeakers[0]);
                    break;
                default:
                    describe(fill, layout);
                    break;
            }
            const std::string text = write_layout(layout);
            const auto lines = tests::lines_of(text);
            const base::Problems problems = problems_of(text);
            if (problems.empty()) ++clean;
            for (const base::Problem& problem : problems) {
                if (problem.line == 0) continue;  // "and 7 more problems"
                INFO(base::text(problem));
                const std::string& line = lines.at(static_cast<std::size_t>(problem.line - 1));
                const bool entry = problem.where.ends_with(']');
                const std::string key = problem.where.substr(problem.where.rfind('.') + 1);
                REQUIRE(tests::contains(line, entry ? "{" : "\"" + key + "\":"));
            }
        }
        CHECK(clean > 10);
    }
}
