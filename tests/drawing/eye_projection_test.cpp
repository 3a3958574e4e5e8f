// SPDX-License-Identifier: MIT
#include "drawing/eye_projection.hpp"

#include "drawing/eye_shapes.hpp"
#include "support/check.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

using namespace rakeline;
using drawing::EyeProjection;

namespace {

const glm::dvec3 kToScreen(0.0, 0.0, -1.0);

glm::dvec3 random_point(std::mt19937& random, double reach_m) {
    std::uniform_real_distribution<double> along(-reach_m, reach_m);
    return {along(random), along(random), along(random)};
}

bool in_window(const EyeProjection& page, glm::dvec2 p) {
    const geometry::Rectangle& w = page.window();
    const double rounding = 1e-9 * std::max(w.width(), w.height());
    return p.x >= w.left - rounding && p.x <= w.right + rounding && p.y >= w.bottom - rounding &&
           p.y <= w.top + rounding;
}

}  // namespace

TEST_SUITE("drawing/eye_projection") {
    TEST_CASE("the target is the origin, and lengths in its plane are true") {
        const EyeProjection page({0.0, 2.0, 10.0}, {0.0, 2.0, 0.0}, kToScreen);
        CHECK(page.point({0.0, 2.0, 0.0}) == glm::dvec2(0.0, 0.0));
        const auto corner = page.point({3.0, 3.5, 0.0});
        REQUIRE(corner);
        tests::check_close(corner->x, 3.0, tests::absolute(1e-12, "to the right is the right"));
        tests::check_close(corner->y, 1.5, tests::absolute(1e-12, "up is up"));
        // Half-way to the eye things look twice as large.
        tests::check_close(page.point({1.0, 2.0, 5.0})->x, 2.0,
                           tests::absolute(1e-12, "similar triangles"));
        CHECK_FALSE(page.point({0.0, 2.0, 11.0}));
    }

    TEST_CASE("golden: angles from the page are the true ones") {
        // From the tangent's definition: a point at 40 degrees to the line of sight stands at
        // D tan 40 degrees.
        const glm::dvec3 eye(1.0, 1.2, 8.0), target(-2.0, 4.0, 0.5);
        const EyeProjection page(eye, target, kToScreen);
        std::mt19937 random(7);
        for (int i = 0; i < 200; ++i) {
            const glm::dvec3 p = eye + random_point(random, 4.0);
            const auto at = page.point(p);
            if (!at) continue;
            const double cosine = glm::dot(glm::normalize(p - eye), glm::normalize(target - eye));
            tests::check_close(std::atan(glm::length(*at) / glm::distance(eye, target)),
                               std::acos(std::min(cosine, 1.0)),
                               tests::absolute(1e-7, "acos near 1 keeps half the digits"));
        }
    }

    TEST_CASE("property: all that is drawn lies in the window, from wherever it is looked at") {
        std::mt19937 random(11);
        for (int i = 0; i < 400; ++i) {
            EyeProjection page(random_point(random, 5.0), random_point(random, 5.0), kToScreen);
            std::vector<glm::dvec3> points(5);
            std::ranges::generate(points, [&] { return random_point(random, 8.0); });
            if (i % 2 == 0) page.frame(points, {0.1, 0.1, 0.2, 0.1});
            for (const glm::dvec2& p : page.outline(points))
                CHECK(in_window(page, p));
            for (const auto& piece : page.line(points)) {
                CHECK(piece.size() > 1);
                for (const glm::dvec2& p : piece)
                    CHECK(in_window(page, p));
            }
        }
    }

    TEST_CASE("what is all behind the eye is not drawn, and what reaches behind it is cut") {
        const EyeProjection page({0.0, 1.0, 5.0}, {0.0, 1.0, 0.0}, kToScreen);
        const std::array behind{glm::dvec3(-1.0, 0.0, 6.0), glm::dvec3(1.0, 0.0, 6.0),
                                glm::dvec3(1.0, 2.0, 7.0)};
        CHECK(page.outline(behind).empty());
        CHECK(page.line(behind).empty());
        const std::array across{glm::dvec3(-1.0, 0.0, 0.0), glm::dvec3(-1.0, 0.0, 9.0)};
        const auto pieces = page.line(across);
        REQUIRE(pieces.size() == 1);
        CHECK(pieces[0].front() == *page.point(across[0]));
    }

    TEST_CASE("an eye in the target, and one straight under it, look somewhere all the same") {
        for (const glm::dvec3 eye : {glm::dvec3(1.0, 3.0, 2.0), glm::dvec3(1.0, 0.5, 2.0)}) {
            const EyeProjection page(eye, {1.0, 3.0, 2.0}, kToScreen);
            const glm::dvec3 seen = page.seen(eye + glm::dvec3(0.3, 0.2, -0.1));
            CHECK(std::isfinite(seen.x + seen.y + seen.z));
            tests::check_close(glm::length(seen), std::sqrt(0.14),
                               tests::absolute(1e-12, "turning keeps lengths"));
        }
    }
}

TEST_SUITE("drawing/eye_shapes") {
    TEST_CASE("golden: a ball of radius r at distance d is seen under asin(r / d) to each side") {
        const sight::Head ball{{0.0, 1.0, 0.0}, 0.1, 0.1, -1};
        const glm::dvec3 eye(0.0, 1.0, 0.5);
        for (const glm::dvec3& p : drawing::silhouette(ball, eye))
            tests::check_close(
                std::acos(glm::dot(glm::normalize(p - eye), glm::dvec3(0.0, 0.0, -1.0))),
                std::asin(0.2), tests::absolute(1e-12, "closed form"));
    }

    TEST_CASE(
        "property: a silhouette lies on the head, and lines just in and out of it part ways") {
        std::mt19937 random(3);
        std::uniform_real_distribution<double> size(0.05, 0.2);
        for (int i = 0; i < 200; ++i) {
            const sight::Head head{random_point(random, 1.0), size(random), size(random), -1};
            const glm::dvec3 eye = random_point(random, 3.0);
            const sight::Blockers house{{head}, {}};
            const drawing::Occluders occluders(house, eye, -2);
            const glm::dvec3 scale(head.radius_m, head.half_height_m, head.radius_m);
            for (const glm::dvec3& p : drawing::silhouette(head, eye)) {
                tests::check_close(glm::length((p - head.centre) / scale), 1.0,
                                   tests::absolute(1e-9, "rounding of the stretch"));
                const auto beside = [&](double by) {
                    return eye + 2.0 * (head.centre + by * (p - head.centre) - eye);
                };
                CHECK(occluders.cover(beside(0.999), 1e9));
                CHECK_FALSE(occluders.cover(beside(1.001), 1e9));
            }
        }
    }

    TEST_CASE("an eye in a head sees no silhouette of it") {
        const sight::Head head{{0.0, 1.2, 4.0}, 0.0775, 0.114, 3};
        CHECK(drawing::silhouette(head, {0.0, 1.25, 4.05}).empty());
    }

    TEST_CASE(
        "a wall stands before what is beyond it and below its edge, and its own before nothing") {
        const sight::Blockers house{
            {}, {{{-1.0, 1.0, 2.0}, {1.0, 1.0, 2.0}, sight::WallHides::below, 0.0, 5}}};
        const glm::dvec3 eye(0.0, 1.2, 4.0);
        const drawing::Occluders occluders(house, eye, 4);
        CHECK(occluders.cover({0.0, 0.7, 0.0}, 1e9));
        CHECK_FALSE(occluders.cover({0.0, 0.9, 0.0}, 1e9));  // the edge projects to 0.8
        CHECK_FALSE(occluders.cover({2.5, 0.5, 0.0}, 1e9));
        CHECK_FALSE(occluders.cover({0.0, 0.5, 3.0}, occluders.plan_distance({0.0, 0.5, 3.0})));
        CHECK_FALSE(drawing::Occluders(house, eye, 5).cover({0.0, 0.7, 0.0}, 1e9));
        // From below its floor it is no seat's back.
        CHECK_FALSE(drawing::Occluders(house, {0.0, -0.1, 4.0}, 4).cover({0.0, -1.0, 0.0}, 1e9));
    }
}
