// SPDX-License-Identifier: MIT
#include "geometry/polygon.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <random>

using namespace rakeline;
using namespace rakeline::tests;
using geometry::Rectangle;
using Polygon = std::vector<glm::dvec2>;

namespace {

/// Star-shaped about the origin, counter-clockwise, concave more often than not.
Polygon random_star(std::mt19937& random) {
    std::uniform_real_distribution<double> radius(0.2, 2.0);
    Polygon out;
    for (int i = 0; i < 9; ++i) {
        const double angle = 2.0 * base::kPi * i / 9.0;
        const double r = radius(random);
        out.push_back({r * std::cos(angle), r * std::sin(angle)});
    }
    return out;
}

bool contains(const Polygon& polygon, glm::dvec2 p) {
    bool inside = false;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 a = polygon[i];
        const glm::dvec2 b = polygon[(i + 1) % polygon.size()];
        if ((a.y > p.y) == (b.y > p.y)) continue;
        if (p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
    }
    return inside;
}

}  // namespace

TEST_SUITE("geometry/polygon") {
    TEST_CASE("area is positive counter-clockwise and turns its sign with the order") {
        Polygon triangle{{0, 0}, {4, 0}, {0, 3}};
        check_close(geometry::signed_area(triangle), 6.0, absolute(1e-15, "small integers"));
        std::reverse(triangle.begin(), triangle.end());
        check_close(geometry::signed_area(triangle), -6.0, absolute(1e-15, "small integers"));
        CHECK(geometry::signed_area(Polygon{}) == 0.0);
    }

    TEST_CASE("a rectangle tells its size and middle") {
        const Rectangle r{.left = -1.0, .right = 3.0, .bottom = 2.0, .top = 5.0};
        CHECK(r.width() == 4.0);
        CHECK(r.height() == 3.0);
        CHECK(r.area() == 12.0);
        CHECK(r.centre() == glm::dvec2(1.0, 3.5));
    }

    TEST_CASE("a diamond clipped to a square leaves the known octagon") {
        const Polygon diamond{{1.5, 0}, {0, 1.5}, {-1.5, 0}, {0, -1.5}};
        const Polygon cut = geometry::clipped(diamond, {-1, 1, -1, 1});
        CHECK(cut.size() == 8);
        // The diamond's area 4.5 less four tips, each a right isosceles triangle 0.5 high.
        check_close(geometry::signed_area(cut), 4.5 - 4.0 * 0.25, absolute(1e-14, "rounding"));
    }

    TEST_CASE("a polygon inside the window comes back as it is, one outside as nothing") {
        const Polygon triangle{{0, 0}, {0.5, 0}, {0, 0.5}};
        CHECK(geometry::clipped(triangle, {-1, 1, -1, 1}) == triangle);
        CHECK(geometry::clipped(triangle, {2, 3, 2, 3}).empty());
        CHECK(geometry::clipped(Polygon{}, {-1, 1, -1, 1}).empty());
    }

    TEST_CASE("a window inside the polygon comes back whole") {
        const Polygon big{{-9, -9}, {9, -9}, {9, 9}, {-9, 9}};
        const Rectangle window{-1, 2, -3, 4};
        check_close(geometry::signed_area(geometry::clipped(big, window)), window.area(),
                    absolute(1e-13, "rounding"));
    }

    TEST_CASE("property: four windows that meet at a point share a concave polygon out") {
        std::mt19937 random(5);
        std::uniform_real_distribution<double> middle(-1.0, 1.0);
        for (int i = 0; i < 2000; ++i) {
            INFO("seed 5, case ", i);
            const Polygon star = random_star(random);
            const glm::dvec2 m(middle(random), middle(random));
            double sum = 0.0;
            for (const Rectangle& w : {Rectangle{-3, m.x, -3, m.y}, Rectangle{m.x, 3, -3, m.y},
                                       Rectangle{-3, m.x, m.y, 3}, Rectangle{m.x, 3, m.y, 3}}) {
                const double part = geometry::signed_area(geometry::clipped(star, w));
                CHECK(part >= -1e-15);
                sum += part;
            }
            check_close(sum, geometry::signed_area(star), absolute(1e-13, "rounding"));
        }
    }

    TEST_CASE("property: a clipped area is the share of sample points inside both") {
        std::mt19937 random(6);
        for (int i = 0; i < 20; ++i) {
            INFO("seed 6, case ", i);
            const Polygon star = random_star(random);
            const Rectangle window{-0.8, 0.7, -0.5, 1.1};
            constexpr int kSteps = 400;
            int inside = 0;
            for (int k = 0; k < kSteps * kSteps; ++k) {
                const glm::dvec2 p(window.left + window.width() * ((k % kSteps) + 0.5) / kSteps,
                                   window.bottom + window.height() * ((k / kSteps) + 0.5) / kSteps);
                if (contains(star, p)) ++inside;
            }
            const double counted = window.area() * inside / (kSteps * kSteps);
            check_close(geometry::signed_area(geometry::clipped(star, window)), counted,
                        absolute(5e-3, "cells that the rim cuts, 400 x 400 grid"));
        }
    }
}
