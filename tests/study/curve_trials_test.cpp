// SPDX-License-Identifier: MIT
#include "study/curve_trials.hpp"

#include "support/check.hpp"
#include "support/demo_rooms.hpp"

#include <algorithm>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

study::Study study_of(const room::Layout& layout, const room::Brief& brief) {
    room::Brief with = brief;
    with.layout = layout;
    return study::compute_study(std::make_shared<const room::Brief>(with));
}

const study::Figure& figure(const study::Study& study, const char* id, int projector, int format) {
    study::Place place;
    place.projector = projector;
    place.format = format;
    const study::Figure* found = study::find_figure(study, id, place);
    REQUIRE_MESSAGE(found, id);
    return *found;
}

}  // namespace

TEST_SUITE("study/curve_trials") {
    TEST_CASE("round trip: a trial put into the layout has the figures that it promised") {
        for (const char* name : {"converted-hall-96", "screening-24"}) {
            const auto brief = demo_brief(name);
            const study::Study before = study_of(brief->layout, *brief);
            const auto help = study::curve_trials(before, 0, 0);
            REQUIRE(help);
            for (const light::CurvatureTrial& trial : {help->curves.at(7), help->tilts.at(23)}) {
                const study::Study after =
                    study_of(study::with_surface(brief->layout, trial), *brief);
                double sides = 1e9;
                for (const auto& value : figure(after, "light.side_ratio", 0, 0).values)
                    sides = std::min(sides, value.si);
                CHECK(sides == trial.side_ratio);
                CHECK(*study::value_at(figure(after, "picture.crop", 0, 0)) == trial.crop);
                CHECK(*study::value_at(figure(after, "picture.throw", 0, 0)) == trial.throw_m);
                CHECK(*study::value_at(figure(after, "picture.keystone_vertical", 0, 0)) ==
                      trial.keystone_vertical);
            }
        }
    }

    TEST_CASE("the surface as it is stands first among the trials' values") {
        const auto brief = demo_brief("steep-240");
        const study::Study study = study_of(brief->layout, *brief);
        const auto help = study::curve_trials(study, 0, 0);
        REQUIRE(help);
        REQUIRE(help->now);
        CHECK(help->now->radius_m == brief->layout.screen.radius_m);
        CHECK(help->now->tilt_rad == brief->layout.screen.tilt_rad);
        CHECK(help->now->crop == *study::value_at(figure(study, "picture.crop", 0, 0)));
    }

    TEST_CASE("no trials without seats, such a projector or such a format") {
        const auto brief = demo_brief("screening-24");
        const study::Study study = study_of(brief->layout, *brief);
        CHECK_FALSE(study::curve_trials(study, 99, 0));
        CHECK_FALSE(study::curve_trials(study, 0, 99));
        room::Layout empty = brief->layout;
        empty.seating.clear();
        empty.audience.reference_seat.clear();
        CHECK_FALSE(study::curve_trials(study_of(empty, *brief), 0, 0));
    }
}
