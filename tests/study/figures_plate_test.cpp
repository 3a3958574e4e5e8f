// SPDX-License-Identifier: MIT
#include "study/gate_plate.hpp"
#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

std::optional<double> value(const study::Study& study, const char* id, int projector, int format) {
    const auto* figure = study::find_figure(study, id, {.projector = projector, .format = format});
    return figure ? study::value_at(*figure) : std::nullopt;
}

study::Study studied(room::Brief brief) {
    return study::compute_study(std::make_shared<const room::Brief>(std::move(brief)));
}

const study::Finding* no_plate(const study::Study& study) {
    const auto& all = study.findings;
    const auto found = std::find_if(all.begin(), all.end(), [](const auto& finding) {
        return finding.what.starts_with("No gate plate");
    });
    return found == all.end() ? nullptr : &*found;
}

}  // namespace

TEST_SUITE("study/figures_plate") {
    TEST_CASE("the figures are those of the plate that is drawn, and there where one is") {
        int plates = 0;
        for (const char* name : kDemoRooms) {
            INFO(name);
            const auto study = study::compute_study(demo_brief(name));
            for (const auto& p : study.picture.pictures) {
                const auto plate = study::gate_plate(study, p.projector, p.format);
                const auto width = value(study, "picture.plate_width", p.projector, p.format);
                CHECK(width.has_value() == static_cast<bool>(plate));
                if (!plate) continue;
                ++plates;
                const auto extent = picture::plate_extent(*plate);
                CHECK(width == extent.width_m);
                CHECK(value(study, "picture.plate_height", p.projector, p.format) ==
                      extent.height_m);
                CHECK(value(study, "picture.plate_left", p.projector, p.format) == extent.left_m);
                CHECK(value(study, "picture.plate_right", p.projector, p.format) == extent.right_m);
                CHECK(value(study, "picture.plate_top", p.projector, p.format) == extent.top_m);
                CHECK(value(study, "picture.plate_bottom", p.projector, p.format) ==
                      extent.bottom_m);
            }
        }
        CHECK(plates >= 3);
    }

    TEST_CASE("an allowance of 0.2 mm takes 0.4 mm off a plate's width and height") {
        room::Brief brief = *demo_brief("converted-hall-96");
        const auto whole = studied(brief);
        for (auto& projector : brief.layout.projectors)
            for (auto& use : projector.formats)
                use.plate_allowance_m = 0.0002;
        const auto less = studied(brief);
        for (const char* id : {"picture.plate_width", "picture.plate_height"}) {
            INFO(id);
            const auto before = value(whole, id, 0, 0);
            const auto after = value(less, id, 0, 0);
            REQUIRE(before);
            REQUIRE(after);
            // A keystoned side leans, and moves out by e / cos of the lean along its end.
            check_close(*before - *after, 0.0004, relative(0.03, "sides lean by under 2 degrees"));
        }
    }

    TEST_CASE("a picture that covers, and yet no plate can be filed, is found with why") {
        room::Brief brief = *demo_brief("converted-hall-96");
        CHECK(no_plate(studied(brief)) == nullptr);
        for (auto& projector : brief.layout.projectors)
            for (auto& use : projector.formats)
                use.plate_allowance_m = 0.02;
        const auto study = studied(brief);
        CHECK_FALSE(value(study, "picture.plate_width", 0, 0));
        const auto* finding = no_plate(study);
        REQUIRE(finding);
        CHECK(finding->verdict == study::Verdict::missed);
        CHECK(finding->what.find("leaves no opening") != std::string::npos);
        CHECK(finding->place.projector == 0);
        CHECK_FALSE(finding->mend.empty());
    }
}
