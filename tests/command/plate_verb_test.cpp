// SPDX-License-Identifier: MIT
#include "command/running.hpp"
#include "room/layout_file.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

std::vector<std::string> plate_words(const std::string& output) {
    return {"plate", kHall, "--projector", "Film 35 mm", "--format", "1.85", "-o", output};
}

std::vector<std::string> plus(std::vector<std::string> words,
                              const std::vector<std::string>& more) {
    words.insert(words.end(), more.begin(), more.end());
    return words;
}

}  // namespace

TEST_SUITE("command/plate_verb") {
    TEST_CASE("plate writes an SVG or a DXF, each the same twice, and says nothing more") {
        const Folder folder;
        for (const char* name : {"plate.svg", "plate.dxf"}) {
            const std::string file = folder.file(name);
            const Ran first = ran(plate_words(file));
            CHECK(first.status == 0);
            CHECK(first.out.empty());
            CHECK(first.err.empty());
            const std::string bytes = Folder::read(file);
            CHECK(has(bytes, "Film 35 mm"));
            CHECK(has(bytes, "File from the lamp side"));
            CHECK(has(bytes, "Seen from the lamp"));
            CHECK(ran(plate_words(file)).status == 0);
            CHECK(Folder::read(file) == bytes);
        }
        CHECK(has(Folder::read(folder.file("plate.dxf")), "AC1009"));
        CHECK(Folder::read(folder.file("plate.svg")).starts_with("<?xml"));
    }

    TEST_CASE("plate takes the allowance, the corner radius, the view and the tenfold drawing") {
        const Folder folder;
        const std::string file = folder.file("plate.svg");
        CHECK(ran(plus(plate_words(file), {"--allowance-mm", "0.25", "--corner-radius-mm", "40",
                                           "--view", "lens", "--tenfold"}))
                  .status == 0);
        const std::string svg = Folder::read(file);
        for (const char* part :
             {"all round: 0.250 mm", "on the screen: 40.000 mm", "Seen from the lens", "10:1"}) {
            CHECK(has(svg, part));
        }
    }

    TEST_CASE("plate takes allowance and corner radius from the layout where none is named") {
        const Folder folder;
        auto layout = tests::demo_brief("converted-hall-96")->layout;
        layout.limits_file = "easy.json";
        folder.write("easy.json",
                     R"({"rakeline_limits": 1, "name": "easy", "limits": [{"figure": )"
                     R"("picture.throw", "least": 1, "unit": "m", "authority": "yours", )"
                     R"("source": "a test"}]})");
        layout.projectors[0].formats[1].plate_allowance_m = 3e-4;
        layout.projectors[0].formats[1].plate_corner_radius_m = 0.025;
        const std::string room = folder.write("room.json", room::write_layout(layout));
        const std::string file = folder.file("plate.svg");
        std::vector<std::string> words = plate_words(file);
        words[1] = room;
        CHECK(ran(words).status == 0);
        CHECK(has(Folder::read(file), "all round: 0.300 mm"));
        CHECK(has(Folder::read(file), "on the screen: 25.000 mm"));
        CHECK(ran(plus(words, {"--allowance-mm", "0"})).status == 0);
        CHECK(has(Folder::read(file), "all round: 0.000 mm"));
    }

    TEST_CASE("plate --help has the caution") {
        CHECK(has(ran({"plate", "--help"}).out, "lamp off and cold"));
    }

    TEST_CASE("refuses: what has no plate, with status 2, and leaves the old file") {
        const Folder folder;
        const std::string kept = folder.write("kept.svg", "the old plate");
        const auto refused = [&](const std::vector<std::string>& words, const std::string& says) {
            const Ran result = ran(words);
            CHECK(result.status == 2);
            CHECK(result.out.empty());
            CHECK(has(result.err, says));
            CHECK(Folder::read(kept) == "the old plate");
        };
        const auto of = [&](const std::string& hall, const std::string& projector,
                            const std::string& format) {
            return std::vector<std::string>{"plate",    hall,   "--projector", projector,
                                            "--format", format, "-o",          kept};
        };
        refused(of(kHall, "Digital", "1.85"), "a digital projector has no gate plate");
        refused(of(kHall, "Film 35 mm", "1.58"), "did you mean '1.85'?");
        refused(of(kHall, "Film", "1.85"), "there is no projector 'Film'");
        refused(of(kHall, "", "1.85"), "name both");
        const std::string grand = tests::demo_path("grand-620");
        refused(of(grand, "Film 70 mm", "1.85"), "does not show '1.85'");
        refused(of(grand, "Film 35 mm", "1.85"), "outside the aperture");
        refused(plus(plate_words(kept), {"--view", "above"}), "there is no view 'above'");
        refused(plus(plate_words(kept), {"--allowance-mm", "-1"}), "negative");
        refused(plus(plate_words(kept), {"--allowance-mm", "20"}), "leaves no opening");
        refused(plate_words(folder.file("plate.pdf")), "neither a .svg nor a .dxf");
        refused(plus(plate_words(folder.file("plate.dxf")), {"--tenfold"}), "full size alone");
    }

    TEST_CASE("refuses: a projector that sees no screen, with why") {
        const Folder folder;
        auto layout = tests::demo_brief("converted-hall-96")->layout;
        layout.limits_file = "easy.json";
        folder.write("easy.json",
                     R"({"rakeline_limits": 1, "name": "easy", "limits": [{"figure": )"
                     R"("picture.throw", "least": 1, "unit": "m", "authority": "yours", )"
                     R"("source": "a test"}]})");
        layout.projectors[0].aim.mode = room::AimMode::angles;
        layout.projectors[0].aim.pitch_rad = -0.5;
        const std::string file = folder.write("room.json", room::write_layout(layout));
        const Ran result = ran({"plate", file, "--projector", "Film 35 mm", "--format", "1.85",
                                "-o", folder.file("plate.svg")});
        CHECK(result.status == 2);
        CHECK(has(result.err, "makes no picture in '1.85': "));
        CHECK_FALSE(fs::exists(folder.file("plate.svg")));
    }
}
