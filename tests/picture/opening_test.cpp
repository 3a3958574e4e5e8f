// SPDX-License-Identifier: MIT
#include "picture/opening.hpp"

#include "picture/random_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;
using picture::masked_opening;
using picture::Opening;
using room::MaskingMode;
using room::MovingEdge;

namespace {

/// Frame 12 m by 6 m.
room::Screen frame(MaskingMode mode, MovingEdge edge = MovingEdge::top) {
    room::Screen s;
    s.width_m = 12.0;
    s.height_m = 6.0;
    s.masking = mode;
    s.moving_edge = edge;
    return s;
}

room::Format ratio(double aspect) {
    return {.name = "x", .aspect_ratio = aspect, .opening_width_m = {}};
}

void check_rectangle(const geometry::Rectangle& actual, const geometry::Rectangle& expected) {
    const Tolerance rounding = absolute(1e-12, "rounding");
    check_close(actual.left, expected.left, rounding);
    check_close(actual.right, expected.right, rounding);
    check_close(actual.bottom, expected.bottom, rounding);
    check_close(actual.top, expected.top, rounding);
}

}  // namespace

TEST_SUITE("picture/opening") {
    TEST_CASE("the sheet hangs by its sill and setback, before tilt") {
        room::Screen s = frame(MaskingMode::fixed);
        s.sill_m = 1.5;
        s.setback_m = 0.8;
        const auto patch = picture::screen_patch(s);
        CHECK(patch.centre == glm::dvec3(0.0, 4.5, 0.8));
        check_close(geometry::point_at(patch, {0.0, -3.0}).y, 1.5, absolute(1e-15, "rounding"));
    }

    TEST_CASE("common height: the sides move and the height stands") {
        check_rectangle(masked_opening(frame(MaskingMode::common_height), ratio(1.5)).uv,
                        {-4.5, 4.5, -3.0, 3.0});
    }

    TEST_CASE("common height: a ratio wider than the frame gives way in height, centred") {
        check_rectangle(masked_opening(frame(MaskingMode::common_height), ratio(2.4)).uv,
                        {-6.0, 6.0, -2.5, 2.5});
    }

    TEST_CASE("common width: the edge that does not move stands") {
        const room::Format wide = ratio(2.4);
        check_rectangle(masked_opening(frame(MaskingMode::common_width, MovingEdge::top), wide).uv,
                        {-6.0, 6.0, -3.0, 2.0});
        check_rectangle(
            masked_opening(frame(MaskingMode::common_width, MovingEdge::bottom), wide).uv,
            {-6.0, 6.0, -2.0, 3.0});
        check_rectangle(masked_opening(frame(MaskingMode::common_width, MovingEdge::both), wide).uv,
                        {-6.0, 6.0, -2.5, 2.5});
    }

    TEST_CASE("common width: a ratio taller than the frame gives way in width") {
        check_rectangle(masked_opening(frame(MaskingMode::common_width), ratio(1.5)).uv,
                        {-4.5, 4.5, -3.0, 3.0});
    }

    TEST_CASE("four-way: the width wanted, centred, and no more than fits") {
        room::Format format = ratio(2.0);
        check_rectangle(masked_opening(frame(MaskingMode::four_way), format).uv,
                        {-6.0, 6.0, -3.0, 3.0});
        format.opening_width_m = 8.0;
        check_rectangle(masked_opening(frame(MaskingMode::four_way), format).uv,
                        {-4.0, 4.0, -2.0, 2.0});
        format.opening_width_m = 80.0;
        check_rectangle(masked_opening(frame(MaskingMode::four_way), format).uv,
                        {-6.0, 6.0, -3.0, 3.0});
    }

    TEST_CASE("only four-way masking follows a wanted width") {
        room::Format format = ratio(2.0);
        format.opening_width_m = 8.0;
        CHECK(masked_opening(frame(MaskingMode::common_height), format).width_m == 12.0);
        CHECK(masked_opening(frame(MaskingMode::fixed), format).width_m == 12.0);
    }

    TEST_CASE("fixed: the picture is the largest of its ratio within the frame, centred") {
        check_rectangle(masked_opening(frame(MaskingMode::fixed), ratio(2.4)).uv,
                        {-6.0, 6.0, -2.5, 2.5});
    }

    TEST_CASE("property: an opening keeps its ratio as chord over height, within the frame") {
        Dice dice(31);
        for (int i = 0; i < 2000; ++i) {
            INFO("seed 31, case ", i);
            room::Screen s = random_screen(dice);
            s.masking = static_cast<MaskingMode>(i % 4);
            s.moving_edge = static_cast<MovingEdge>(i % 3);
            room::Format format = ratio(dice.between(1.1, 3.0));
            if (dice.one_in(2)) format.opening_width_m = dice.between(2.0, 25.0);
            const Opening o = masked_opening(s, format);
            const auto patch = picture::screen_patch(s);
            check_close(o.width_m / o.height_m, format.aspect_ratio, relative(1e-12, "rounding"));
            CHECK(o.width_m <= s.width_m * (1.0 + 1e-12));
            CHECK(o.uv.top <= 0.5 * s.height_m * (1.0 + 1e-12));
            CHECK(o.uv.bottom >= -0.5 * s.height_m * (1.0 + 1e-12));
            const glm::dvec3 left = picture::opening_point(patch, o, -1.0, 0.0);
            const glm::dvec3 right = picture::opening_point(patch, o, 1.0, 0.0);
            check_close(glm::length(right - left), o.width_m, relative(1e-12, "rounding"));
            check_close(o.area_m2, o.uv.area(), relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("opening places run from -1 to +1 over arc and height") {
        room::Screen s = frame(MaskingMode::common_width);
        s.radius_m = 10.0;
        const Opening o = masked_opening(s, ratio(2.4));
        const auto patch = picture::screen_patch(s);
        const glm::dvec2 corner =
            geometry::coordinates_of(patch, picture::opening_point(patch, o, 1.0, -1.0));
        check_close(corner.x, 10.0 * std::asin(0.6), relative(1e-14, "rounding"));
        check_close(corner.y, -3.0, relative(1e-14, "rounding"));
        const glm::dvec2 half =
            geometry::coordinates_of(patch, picture::opening_point(patch, o, 0.5, 0.0));
        check_close(half.x, 5.0 * std::asin(0.6), relative(1e-14, "rounding"));
        check_close(half.y, -0.5, relative(1e-14, "rounding"));
    }
}
