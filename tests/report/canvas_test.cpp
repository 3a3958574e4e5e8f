// SPDX-License-Identifier: MIT
#include "report/canvas.hpp"

#include "drawing/studied_room.hpp"
#include "report/surface.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;

namespace {

struct Ink {
    double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
};

Ink ink_of(const drawing::Drawing& drawing, const report::Placement& placement) {
    const auto lettering = report::Lettering::open();
    REQUIRE(bool(lettering));
    const report::Surface surface(
        cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, nullptr));
    const report::Context context(cairo_create(surface.get()));
    report::Canvas(context.get(), *lettering, report::paper_theme(), base::UnitSystem::metric)
        .paint(drawing, placement);
    double x = 0.0, y = 0.0, width = 0.0, height = 0.0;
    cairo_recording_surface_ink_extents(surface.get(), &x, &y, &width, &height);
    return {x, y, x + width, y + height};
}

drawing::Drawing one_line(bool y_down) {
    drawing::Drawing d;
    d.low = {0.0, 0.0};
    d.high = {10.0, 10.0};
    d.y_down = y_down;
    d.items.emplace_back(
        drawing::Line{.points = {{2.0, 1.0}, {6.0, 1.0}}, .weight = drawing::Weight::seen});
    return d;
}

const tests::Tolerance kPixel = tests::absolute(1.0, "ink extents are whole units");

}  // namespace

TEST_SUITE("report/canvas") {
    TEST_CASE("golden: a metre at 1 : 100 is 10 mm on paper, 28.35 pt") {
        check_close(report::points_per_metre(100.0), 28.35, tests::printed_digits(2));
        check_close(report::points_per_metre(50.0), 2.0 * report::points_per_metre(100.0),
                    tests::relative(1e-12, "rounding"));
    }

    TEST_CASE("a fitted drawing fills its box in one direction and fits in the other") {
        drawing::Drawing d = one_line(false);
        d.high = {20.0, 10.0};
        check_close(report::fitted(d, {0, 0, 400, 400}).points_per_m, 20.0,
                    tests::relative(1e-12, "rounding"));
        check_close(report::fitted(d, {0, 0, 400, 100}).points_per_m, 10.0,
                    tests::relative(1e-12, "rounding"));
    }

    TEST_CASE("a line lands where the scale and the box put it") {
        const Ink ink = ink_of(one_line(false), {{100.0, 50.0, 200.0, 200.0}, 20.0});
        check_close(ink.left, 140.0, kPixel);
        check_close(ink.right, 220.0, kPixel);
        check_close(0.5 * (ink.top + ink.bottom), 230.0, kPixel);
    }

    TEST_CASE("a plan's second coordinate runs down the page") {
        const Ink ink = ink_of(one_line(true), {{100.0, 50.0, 200.0, 200.0}, 20.0});
        check_close(0.5 * (ink.top + ink.bottom), 70.0, kPixel);
    }

    TEST_CASE("drawings of all demo rooms keep their ink within the box") {
        for (const char* name : tests::kDemoRooms) {
            INFO(name);
            const study::Study& study = tests::studied(name);
            for (const auto& d : {drawing::plan(study, {}), drawing::long_section(study, {}),
                                  drawing::screen_face(study, {})}) {
                INFO(d.title);
                const report::Box box{0.0, 0.0, 700.0, 500.0};
                const Ink ink = ink_of(d, report::fitted(d, box));
                CHECK(ink.left >= -1.0);
                CHECK(ink.top >= -1.0);
                CHECK(ink.right <= 701.0);
                CHECK(ink.bottom <= 501.0);
            }
        }
    }
}
