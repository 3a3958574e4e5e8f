// SPDX-License-Identifier: MIT
#include "study/luminance_map.hpp"

#include "support/check.hpp"
#include "support/demo_rooms.hpp"

using namespace rakeline;

namespace {

double figure(const study::Study& study, const char* id, int seat) {
    const study::Figure* found = study::find_figure(study, id, {.projector = 0, .format = 0});
    REQUIRE(found);
    const auto value = study::value_at(*found, seat);
    REQUIRE(value);
    return *value;
}

}  // namespace

TEST_SUITE("study/luminance_map") {
    TEST_CASE("property: the map of every demo room agrees with its figures") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study study = study::compute_study(tests::demo_brief(name));
            for (int seat = 0; seat < static_cast<int>(study.seats.seats.size()); seat += 17) {
                INFO(name, " seat ", seat);
                const auto seen = study::seat_luminance(study, 0, 0, seat);
                REQUIRE(seen);
                const double centre = seen->map.at(30, 20).cdm2;
                CHECK(centre == figure(study, "light.luminance", seat));
                const double spot = centre * figure(study, "light.hot_spot_ratio", seat);
                CHECK(light::range_of(seen->map).most_cdm2 <= spot * (1.0 + 1e-3));
            }
        }
    }

    TEST_CASE("property: one scale for all seats, which holds the window and every map") {
        for (const char* name : tests::kDemoRooms) {
            const study::Study study = study::compute_study(tests::demo_brief(name));
            for (int seat = 0; seat < static_cast<int>(study.seats.seats.size()); seat += 17) {
                INFO(name, " seat ", seat);
                const auto seen = study::seat_luminance(study, 0, 0, seat);
                REQUIRE(seen);
                const study::LuminanceScale& scale = seen->scale;
                REQUIRE(scale.window_least_cdm2);
                REQUIRE(scale.window_most_cdm2);
                CHECK(scale.least_cdm2 <= *scale.window_least_cdm2);
                CHECK(scale.most_cdm2 >= *scale.window_most_cdm2);
                CHECK(scale.least_cdm2 <= light::range_of(seen->map).least_cdm2);
                CHECK(scale.most_cdm2 >= light::range_of(seen->map).most_cdm2);
                CHECK(scale.most_cdm2 - scale.least_cdm2 >= 0.1 * scale.most_cdm2 * (1 - 1e-9));
            }
        }
    }

    TEST_CASE("the window is that of the projector's own kind") {
        // ISO 26431-1:2008, as reported: digital 48 +-10.2; SMPTE ST 196, as reported: film.
        const study::Study study = study::compute_study(tests::demo_brief("converted-hall-96"));
        for (std::size_t p = 0; p < study.layout().projectors.size(); ++p) {
            const auto seen = study::seat_luminance(study, static_cast<int>(p), 0, 0);
            if (!seen) continue;
            const bool film = study.layout().projectors[p].kind == room::SourceKind::film;
            CHECK(seen->scale.window_least_cdm2 == (film ? 41.0 : 37.8));
        }
    }

    TEST_CASE("without limits an even picture still has a scale with some width") {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("screening-24"));
        brief->limits.limits.clear();
        brief->layout.screen.surface = {};
        const study::Study study = study::compute_study(brief);
        const auto seen = study::seat_luminance(study, 0, 0, 0);
        REQUIRE(seen);
        CHECK_FALSE(seen->scale.window_least_cdm2);
        CHECK(seen->scale.most_cdm2 - seen->scale.least_cdm2 >= 0.0999 * seen->scale.most_cdm2);
    }

    TEST_CASE("a format that the projector does not show has no map") {
        auto brief = std::make_shared<room::Brief>(*tests::demo_brief("screening-24"));
        const auto shown = brief->layout.formats.size();
        brief->layout.formats.push_back({.name = "not shown", .aspect_ratio = 1.5});
        const study::Study study = study::compute_study(brief);
        CHECK_FALSE(study::seat_luminance(study, 0, static_cast<int>(shown), 0));
    }
}
