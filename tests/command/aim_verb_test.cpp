// SPDX-License-Identifier: MIT
#include "command/running.hpp"
#include "study/study.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

const std::string kSteep = demo_path("steep-240");

Ran aim(std::vector<std::string> words) {
    words.insert(words.begin(), "aim");
    return ran(words);
}

double spread_at_4k(const study::Study& study, int loudspeaker) {
    const study::Figure* figure =
        study::find_figure(study, "sound.level_spread", {.loudspeaker = loudspeaker});
    REQUIRE(figure != nullptr);
    return study::value_at(*figure, 6).value();
}

}  // namespace

TEST_SUITE("command/aim_verb") {
    TEST_CASE("aim prints before and after of every screen loudspeaker, with scope and caution") {
        const Ran run = aim({kSteep});
        CHECK(run.status == 0);
        for (const char* part : {"L: ", "C: ", "R: ", "level spread at 2 to 8 kHz", "direct sound",
                                 "licensed rigger"}) {
            INFO(part);
            CHECK(has(run.out, part));
        }
        CHECK_FALSE(has(run.out, "Sub"));
        CHECK(has(aim({kSteep, "--loudspeaker", "C", "--height", "--imperial"}).out, "C: "));
    }

    TEST_CASE("round trip: aim -o writes a layout in which the seats differ no more") {
        const Folder folder;
        const std::string file = folder.file("aimed.json");
        const Ran run = aim({kSteep, "--loudspeaker", "L", "-o", file});
        INFO(run.err);
        REQUIRE(run.status == 0);
        const auto before = study::open_room(kSteep, base::read_text_file);
        const auto after = study::open_room(file, base::read_text_file);
        REQUIRE(before);
        REQUIRE(after);
        const auto a = study::compute_study(std::make_shared<const room::Brief>(*before));
        const auto b = study::compute_study(std::make_shared<const room::Brief>(*after));
        double was = 0.0, is = 0.0;
        for (int band = 5; band <= 7; ++band) {
            was += study::value_at(*study::find_figure(a, "sound.level_spread"), band).value();
            is += study::value_at(*study::find_figure(b, "sound.level_spread"), band).value();
        }
        CHECK(is <= was);
        CHECK(spread_at_4k(a, 1) == spread_at_4k(b, 1));
        // Aimed already: nothing better is found.
        CHECK(aim({file, "--loudspeaker", "L"}).status == 0);
    }

    TEST_CASE("refuses: a loudspeaker that is none, one that is not of the screen, its own file") {
        CHECK(aim({kSteep, "--loudspeaker", "Q"}).status == 2);
        const Ran sub = aim({kSteep, "--loudspeaker", "Sub left"});
        CHECK(sub.status == 2);
        CHECK(has(sub.err, "no loudspeaker to aim"));
        CHECK(aim({kSteep, "-o", kSteep}).status == 2);
    }
}
