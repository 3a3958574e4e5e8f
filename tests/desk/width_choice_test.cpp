// SPDX-License-Identifier: MIT
#include "desk/width_choice.hpp"

#include "headless.hpp"
#include "support/check.hpp"

#include <GLFW/glfw3.h>

namespace rakeline::desk {

TEST_SUITE_BEGIN("desk/width_choice");

TEST_CASE("the advice follows format, share and units, and is kept while none of them changes") {
    Headless headless;
    Session session(quiet_options(demo("converted-hall-96")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.widths_open = true;
    headless.frame(session);
    const WidthCache first = w.widths;
    REQUIRE(first.advice.has_value());
    CHECK(first.words.size() >= 3);
    headless.frame(session);
    CHECK(w.widths.key == first.key);
    w.format = 2;
    headless.frame(session);
    CHECK(w.widths.advice->format == 2);
    w.width_share = 0.5;
    headless.frame(session);
    CHECK(w.widths.advice->share == 0.5);
    w.settings.units = base::UnitSystem::imperial;
    headless.frame(session);
    CHECK(w.widths.words.front().find(" ft") != std::string::npos);
    CHECK(session.document().history().size() == 1);
}

TEST_CASE("taking the widest picture is one step that undo takes back") {
    Headless headless;
    Session session(quiet_options(demo("steep-240")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.widths_open = true;
    headless.frame(session);
    REQUIRE(w.widths.advice.has_value());
    REQUIRE_FALSE(w.widths.advice->ranges.empty());
    const double widest = w.widths.advice->ranges.back().most_m;
    const room::Layout before = session.document().current()->layout;
    const auto layout = study::with_picture_width(before, w.format, widest);
    REQUIRE(layout);
    session.edit({"Picture width", *layout, {}});
    session.wait_for_study();
    tests::check_close(session.study()->picture.openings.at(0).width_m, widest,
                       tests::relative(1e-12, "rounding"));
    headless.frame(session);
    CHECK(w.widths.advice->now_m > 0.999 * widest);
    session.press_key({GLFW_KEY_Z, true, false});
    headless.frame(session);
    CHECK(session.document().current()->layout == before);
}

TEST_CASE("the strip draws the plan anew for contours, and keeps them for the next room") {
    Headless headless;
    Session session(quiet_options(demo("steep-240")));
    session.wait_for_study();
    Workspace& w = session.workspace();
    w.strip = StripDrawing::plan;
    headless.frame(session);
    const auto plain = w.drawing_cache.drawing;
    w.contours = true;
    w.seat_figure = "sight.off_axis";
    headless.frame(session);
    REQUIRE(w.drawing_cache.drawing);
    CHECK(w.drawing_cache.drawing != plain);
    int numbers = 0;
    for (const auto& item : w.drawing_cache.drawing->items)
        if (const auto* label = std::get_if<drawing::Label>(&item))
            numbers += label->text.ends_with("°");
    CHECK(numbers >= 2);
}

TEST_SUITE_END();

}  // namespace rakeline::desk
