// SPDX-License-Identifier: MIT
#include "desk/meter_choice.hpp"

#include "headless.hpp"
#include "support/check.hpp"

namespace rakeline::desk {
namespace {

/// The hall's own luminance at the nine points, with the panel open.
void type_readings(Session& session, double times) {
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.meter.open = true;
    w.meter.document = w.document;
    const study::Study& study = *session.study();
    for (int i = 0; i < light::kPointCount; ++i) {
        w.meter.read[static_cast<std::size_t>(i)] =
            times * light::luminance_cdm2(study.light.lights.front(), *study.reference_seat,
                                          static_cast<light::PicturePoint>(i));
    }
}

}  // namespace

TEST_SUITE_BEGIN("desk/meter_choice");

TEST_CASE("readings that are typed in are fitted, and kept while nothing changes") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    headless.frame(session);
    type_readings(session, 0.7);
    headless.frame(session);
    const MeterCache& cache = session.workspace().meter_cache;
    REQUIRE(cache.check);
    tests::check_close(cache.check->fit.flux_ratio(), 0.7, tests::relative(1e-9, "rounding"));
    CHECK(cache.map);
    CHECK_FALSE(cache.advice.empty());
    CHECK_FALSE(cache.cautions.empty());
    const auto* kept = cache.map.get();
    headless.frame(session);
    CHECK(session.workspace().meter_cache.map.get() == kept);
    session.workspace().meter.read.fill(0.0);
    headless.frame(session);
    CHECK_FALSE(session.workspace().meter_cache.check);
}

TEST_CASE("adopting is one edit after which the readings agree with the layout") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    headless.frame(session);
    type_readings(session, 0.7);
    headless.frame(session);
    const auto layout = study::metered_layout(session.document().current()->layout,
                                              *session.workspace().meter_cache.check);
    REQUIRE(layout);
    session.edit({"Adopt meter readings", *layout, {}});
    session.wait_for_study();
    headless.frame(session);
    const MeterCache& cache = session.workspace().meter_cache;
    REQUIRE(cache.check);
    CHECK(cache.check->signs.empty());
    tests::check_close(cache.check->fit.flux_ratio(), 1.0, tests::relative(1e-9, "rounding"));
}

TEST_CASE("a pair without a picture says so and fits nothing") {
    Headless headless;
    Session session(quiet_options(demo("grand-620")));
    headless.frame(session);
    type_readings(session, 1.0);
    session.workspace().projector = 1;
    session.workspace().format = 0;
    headless.frame(session);
    CHECK_FALSE(session.workspace().meter_cache.check);
    CHECK_FALSE(session.workspace().meter_cache.refused.empty());
}

TEST_CASE("readings of one room are let go of in another") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    headless.frame(session);
    type_readings(session, 1.0);
    ++session.workspace().document;
    headless.frame(session);
    CHECK(session.workspace().meter.read[0] == 0.0);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
