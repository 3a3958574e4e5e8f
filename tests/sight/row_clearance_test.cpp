// SPDX-License-Identifier: MIT
#include "sight/row_clearance.hpp"

#include "sight/test_picture.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>
#include <vector>

using namespace rakeline;
using sight::c_value;
using sight::clearance;
using sight::nearest_focus;
using sight::riser_for_c;
using tests::absolute;
using tests::between;
using tests::check_close;
using tests::Picture;
using tests::picture_of;
using tests::Shape;

namespace {

const auto kRounding = absolute(1e-11, "rounding of lengths of order ten");

/// Plan distance from `eye` to the nearest of many points of the lower edge.
double sampled_distance(const Picture& p, const glm::dvec3& eye) {
    double nearest = 1e9;
    for (int i = 0; i <= 20000; ++i) {
        const double across = -1.0 + i / 10000.0;
        const glm::dvec3 point = picture::opening_point(p.surface, p.opening, across, -1.0);
        nearest = std::min(nearest, std::hypot(point.x - eye.x, point.z - eye.z));
    }
    return nearest;
}

room::SeatPlan plan_of_eyes(const std::vector<glm::dvec3>& eyes) {
    room::SeatPlan plan;
    for (int i = 0; i < static_cast<int>(eyes.size()); ++i) {
        room::Row row;
        row.centre_eye = eyes[static_cast<std::size_t>(i)];
        if (i > 0) row.row_in_front = i - 1;
        if (i > 1) row.second_row_in_front = i - 2;
        plan.rows.push_back(row);
    }
    return plan;
}

}  // namespace

TEST_SUITE("sight/row_clearance") {
    TEST_CASE("property: riser and clearance undo each other") {
        std::mt19937 random(20260201);
        for (int i = 0; i < 500; ++i) {
            INFO("draw ", i, " of seed 20260201");
            const double distance = between(random, 3.0, 40.0);
            const double height = between(random, -2.0, 10.0);
            const double tread = between(random, 0.8, 2.0);
            const double wanted = between(random, -0.1, 0.3);
            const double riser = riser_for_c(distance, height, tread, wanted);
            check_close(c_value(distance, height, tread, riser), wanted, kRounding);
        }
    }

    TEST_CASE("property: clearance is the sight line's height over the front eye") {
        std::mt19937 random(20260202);
        for (int i = 0; i < 500; ++i) {
            INFO("draw ", i, " of seed 20260202");
            const glm::dvec3 focus(between(random, -3.0, 3.0), 1.2, 1.0);
            const glm::dvec3 rear(between(random, -3.0, 3.0), between(random, 1.0, 5.0), 12.0);
            // A front eye somewhere below or above the sight line itself.
            const double part = between(random, 0.05, 0.3);
            glm::dvec3 front = rear + part * (focus - rear);
            const double drop = between(random, -0.3, 0.3);
            front.y -= drop;
            const auto c = clearance(rear, front, focus);
            REQUIRE(c);
            check_close(*c, drop, kRounding);
        }
    }

    TEST_CASE("a front eye beside the sight line counts by where it falls on it") {
        // The line runs along z; the front eye stands 0.3 m aside of it.
        const auto straight = clearance({0, 2.0, 10.0}, {0.0, 1.7, 9.0}, {0, 1.0, 0.0});
        const auto aside = clearance({0, 2.0, 10.0}, {0.3, 1.7, 9.0}, {0, 1.0, 0.0});
        REQUIRE(straight);
        REQUIRE(aside);
        check_close(*aside, *straight, kRounding);
        check_close(*straight, 1.0 + 0.9 - 1.7, kRounding);
    }

    TEST_CASE("there is no clearance over an eye that is not between rear eye and focus") {
        const glm::dvec3 rear(0, 2.0, 10.0);
        const glm::dvec3 focus(0, 1.0, 0.0);
        CHECK_FALSE(clearance(rear, {0, 2.0, 11.0}, focus));
        CHECK_FALSE(clearance(rear, {0, 2.0, 10.0}, focus));
        CHECK_FALSE(clearance(rear, {0, 2.0, -1.0}, focus));
        CHECK_FALSE(clearance({0, 2.0, 0.0}, {0, 1.0, 0.0}, focus));
        CHECK(clearance(rear, {0, 2.0, 9.0}, focus));
    }

    TEST_CASE("the focus on a flat picture is straight ahead, or the nearer end of its edge") {
        const Picture p =
            picture_of({.width_m = 10.0, .height_m = 4.0, .sill_m = 1.1, .setback_m = 1.2});
        const auto x_of = [&](double across) {
            return nearest_focus(p.surface, p.opening, {across, 1.2, 9.0}).x;
        };
        check_close(x_of(0.0), 0.0, kRounding);
        check_close(x_of(-3.5), -3.5, kRounding);
        check_close(x_of(7.0), 5.0, kRounding);
        check_close(x_of(-7.0), -5.0, kRounding);
        const glm::dvec3 focus = nearest_focus(p.surface, p.opening, {1.0, 1.2, 9.0});
        check_close(focus.y, 1.1, kRounding);
        check_close(focus.z, 1.2, kRounding);
    }

    TEST_CASE("the focus on an upright curved picture lies on the line from its axis") {
        const Picture p = picture_of({.width_m = 10.0, .height_m = 4.0, .radius_m = 20.0});
        // The axis stands at z = 20; an eye before it looks along the radius through itself.
        const glm::dvec3 eye(1.5, 1.2, 8.0);
        const double radial = std::hypot(1.5, 12.0);
        const glm::dvec3 focus = nearest_focus(p.surface, p.opening, eye);
        check_close(focus.x, 20.0 * 1.5 / radial, kRounding);
        check_close(focus.z, 20.0 - 20.0 * 12.0 / radial, kRounding);
    }

    TEST_CASE("behind the axis of a curved picture the edge's ends are nearest") {
        const Picture p = picture_of({.width_m = 10.0, .height_m = 4.0, .radius_m = 12.0});
        check_close(nearest_focus(p.surface, p.opening, {1.0, 1.2, 16.0}).x, 5.0, kRounding);
        check_close(nearest_focus(p.surface, p.opening, {-1.0, 1.2, 16.0}).x, -5.0, kRounding);
        check_close(std::abs(nearest_focus(p.surface, p.opening, {0.0, 1.2, 16.0}).x), 5.0,
                    kRounding);
    }

    TEST_CASE("property: no point of the edge is nearer in plan than the focus") {
        std::mt19937 random(20260203);
        for (int i = 0; i < 60; ++i) {
            INFO("draw ", i, " of seed 20260203");
            Shape shape;
            shape.width_m = between(random, 5.0, 20.0);
            shape.height_m = between(random, 3.0, 9.0);
            shape.radius_m = random() % 4 ? between(random, 11.0, 60.0) : 0.0;
            shape.tilt_rad = between(random, -0.2, 0.3);
            const Picture p = picture_of(shape);
            const glm::dvec3 eye(between(random, -9.0, 9.0), 1.2, between(random, 5.0, 30.0));
            const glm::dvec3 focus = nearest_focus(p.surface, p.opening, eye);
            const double found = std::hypot(focus.x - eye.x, focus.z - eye.z);
            const double sampled = sampled_distance(p, eye);
            CHECK(found <= sampled + 1e-12);
            check_close(found, sampled, absolute(1e-6, "samples stand up to 1 mm from the foot"));
            // It is a point of the lower edge, not just near it.
            const glm::dvec2 uv = geometry::coordinates_of(p.surface, focus);
            check_close(uv.y, p.opening.uv.bottom, kRounding);
            CHECK(std::abs(uv.x) <= p.opening.uv.right + 1e-12);
        }
    }

    TEST_CASE("rows take their clearance over the row in front, staggered ones over the second") {
        const Picture p = picture_of({.width_m = 10.0, .height_m = 4.0, .sill_m = 1.0});
        const room::SeatPlan plan = plan_of_eyes({{0, 1.2, 5.0}, {0, 1.3, 6.0}, {0, 1.5, 7.0}});
        room::SeatBlock block;
        const auto aligned = sight::row_clearances(p.surface, p.opening, plan, {block});
        REQUIRE(aligned.size() == 3);
        CHECK_FALSE(aligned[0].c_m);
        check_close(aligned[1].c_m.value(), c_value(5.0, 0.2, 1.0, 0.1), kRounding);
        check_close(aligned[2].c_m.value(), c_value(6.0, 0.3, 1.0, 0.2), kRounding);
        CHECK_FALSE(aligned[2].c_second_m);

        block.staggered = true;
        const auto staggered = sight::row_clearances(p.surface, p.opening, plan, {block});
        CHECK_FALSE(staggered[1].c_second_m);
        check_close(staggered[2].c_second_m.value(), c_value(5.0, 0.2, 2.0, 0.3), kRounding);
        check_close(staggered[2].c_m.value(), aligned[2].c_m.value(), kRounding);
    }
}
