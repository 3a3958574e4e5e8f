// SPDX-License-Identifier: MIT
#include "drawing/hole_patch.hpp"

#include "drawing/perforation_plot.hpp"
#include "drawing/studied_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

bool has_label(const drawing::Drawing& drawing, const std::string& part) {
    const auto labels = items_of<drawing::Label>(drawing);
    return std::any_of(labels.begin(), labels.end(), [&](const drawing::Label& label) {
        return label.text.find(part) != std::string::npos;
    });
}

/// The first digital projector and a format that it shows.
std::optional<drawing::DrawingChoice> digital(const study::Study& study) {
    for (const picture::ProjectedPicture& p : study.picture.pictures) {
        const auto& machine = study.layout().projectors.at(static_cast<std::size_t>(p.projector));
        if (machine.kind != room::SourceKind::digital) continue;
        drawing::DrawingChoice choice;
        choice.projector = p.projector;
        choice.format = p.format;
        return choice;
    }
    return std::nullopt;
}

}  // namespace

TEST_SUITE("drawing/hole_patch") {
    TEST_CASE("twenty by twelve pixels stand on the sheet in their true size, under the holes") {
        int drawn = 0;
        for (const char* name : kDemoRooms) {
            const study::Study& study = studied(name);
            const auto choice = digital(study);
            if (!choice) continue;
            const auto patch = drawing::hole_patch(study, *choice);
            if (study.layout().screen.perforation.pattern == room::PerforationPattern::none) {
                CHECK_FALSE(patch);
                continue;
            }
            REQUIRE(patch);
            ++drawn;
            CHECK(bounds_hold_all(*patch));
            const auto fills = items_of<drawing::Fill>(*patch);
            const auto pixels = std::count_if(fills.begin(), fills.end(), [](const auto& fill) {
                return fill.ink == drawing::Ink::screen;
            });
            CHECK(pixels == 240);
            CHECK(fills.size() > 240);
            CHECK(has_label(*patch, "pixels "));
            CHECK(has_label(*patch, " mm"));
            const auto* beat = sound::find_beat(study.holes, *choice->projector, *choice->format);
            CHECK(has_label(*patch, beat ? "beat every" : "no beat"));
        }
        CHECK(drawn > 0);
    }

    TEST_CASE("refuses: film, and a sheet without holes, in words") {
        const study::Study& hall = studied("converted-hall-96");
        for (std::size_t p = 0; p < hall.layout().projectors.size(); ++p) {
            if (hall.layout().projectors[p].kind != room::SourceKind::film) continue;
            drawing::DrawingChoice choice;
            choice.projector = static_cast<int>(p);
            const auto patch = drawing::hole_patch(hall, choice);
            REQUIRE_FALSE(patch);
            CHECK_FALSE(patch.problems().front().mend.empty());
        }
    }
}

TEST_SUITE("drawing/perforation_plot") {
    TEST_CASE(
        "the plot names both axes with units, numbers the sheets and marks the one that hangs") {
        const room::SheetChoice micro{
            .name = "micro",
            .perforation = {room::PerforationPattern::square, 0.0005, 0.0022},
            .thickness_m = 0.0003,
            .mass_kg_m2 = 0.35};
        room::SheetChoice solid = micro;
        solid.name = "solid";
        solid.perforation.pattern = room::PerforationPattern::none;
        for (const char* name : kDemoRooms) {
            const auto trials = study::sheet_trials(studied(name), std::vector{micro, solid});
            REQUIRE(trials);
            const auto plot = drawing::perforation_plot(*trials);
            for (const char* part : {"10 kHz", " dB", " %", "light lost", "now", "1", "2", "micro",
                                     "solid", study::kPresentSheet}) {
                INFO(part);
                CHECK(has_label(plot, part));
            }
            CHECK(bounds_hold_all(plot));
        }
    }
}
