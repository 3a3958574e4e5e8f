// SPDX-License-Identifier: MIT
#include "desk/luminance_choice.hpp"

#include "desk/seat_colours.hpp"
#include "headless.hpp"

#include <doctest/doctest.h>

namespace rakeline::desk {
namespace {

drawing::Shows seat(int index) {
    return {drawing::Shows::Kind::seat, index};
}

}  // namespace

TEST_SUITE_BEGIN("desk/luminance_choice");

TEST_CASE("the map is that of the selected seat, else the reference seat, and is kept") {
    Headless headless;
    Session session(quiet_options(demo("grand-620")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    headless.frame(session);
    CHECK(w.luminance_cache.key.study == 0);  // not asked for, not worked out
    w.luminance = true;
    w.strip = StripDrawing::screen;
    headless.frame(session);
    const auto reference = w.luminance_cache.screen;
    REQUIRE(reference);
    headless.frame(session);
    CHECK(w.luminance_cache.screen == reference);
    w.selected = seat(0);
    headless.frame(session);
    headless.frame(session);
    CHECK(w.luminance_cache.key.seat == 0);
    CHECK(w.luminance_cache.screen != reference);
    w.from_seat = true;
    headless.frame(session);
    CHECK(w.luminance_cache.key.seat == 0);
}

TEST_CASE("seats whose values read the same have one colour") {
    // A matte screen looks the same from everywhere before it.
    auto brief = std::make_shared<room::Brief>(
        *study::open_room(demo("converted-hall-96"), base::read_text_file));
    const study::Study study = study::compute_study(brief);
    Workspace w;
    w.seat_figure = "light.luminance";
    const SeatColours even = seat_colours(study, w);
    REQUIRE(even.figure);
    CHECK(even.alike);
    for (const view::SeatPaint& paint : even.seats)
        CHECK(paint.r == even.seats.front().r);
    w.seat_figure = "sight.subtended_width";
    CHECK_FALSE(seat_colours(study, w).alike);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
