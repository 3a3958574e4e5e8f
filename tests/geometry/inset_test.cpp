// SPDX-License-Identifier: MIT
#include "geometry/inset.hpp"

#include "geometry/polygon.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <random>

using namespace rakeline;
using namespace rakeline::tests;
using Polygon = std::vector<glm::dvec2>;

namespace {

const Polygon kBoard{{0.0, 0.0}, {4.0, 0.0}, {4.0, 2.0}, {0.0, 2.0}};

/// A convex polygon: points on an ellipse, at random angles.
Polygon random_convex(std::mt19937& random, int corners) {
    std::uniform_real_distribution<double> angle(0.0, 6.283185307179586);
    std::vector<double> angles;
    for (int i = 0; i < corners; ++i)
        angles.push_back(angle(random));
    std::sort(angles.begin(), angles.end());
    Polygon out;
    for (const double a : angles)
        out.emplace_back(3.0 * std::cos(a), 2.0 * std::sin(a));
    return out;
}

/// Least signed distance of a point inside from the lines of the sides.
double depth(const Polygon& polygon, glm::dvec2 p) {
    double least = 1e9;
    for (std::size_t i = 0; i < polygon.size(); ++i) {
        const glm::dvec2 side = polygon[(i + 1) % polygon.size()] - polygon[i];
        const glm::dvec2 to = p - polygon[i];
        least = std::min(least, (side.x * to.y - side.y * to.x) / glm::length(side));
    }
    return least;
}

}  // namespace

TEST_SUITE("geometry/inset") {
    TEST_CASE("a board loses the same on all four sides") {
        const Polygon in = geometry::inset(kBoard, 0.25);
        REQUIRE(in.size() == 4);
        const Polygon expected{{0.25, 0.25}, {3.75, 0.25}, {3.75, 1.75}, {0.25, 1.75}};
        for (std::size_t i = 0; i < 4; ++i)
            check_close(glm::length(in[i] - expected[i]), 0.0, absolute(1e-15, "rounding"));
    }

    TEST_CASE("nothing taken off leaves every point as it was") {
        CHECK(geometry::inset(kBoard, 0.0) == kBoard);
    }

    TEST_CASE("where the whole width is taken off, nothing is left") {
        CHECK(geometry::inset(kBoard, 0.999).size() == 4);
        CHECK(geometry::inset(kBoard, 1.001).empty());
        CHECK(geometry::inset(kBoard, 50.0).empty());
    }

    TEST_CASE("points along a straight side and points given twice change nothing") {
        const Polygon dotted{{0.0, 0.0}, {1.0, 0.0}, {1.0, 0.0}, {4.0, 0.0},
                             {4.0, 2.0}, {2.5, 2.0}, {0.0, 2.0}};
        const Polygon in = geometry::inset(dotted, 0.25);
        check_close(geometry::signed_area(in), 3.5 * 1.5, absolute(1e-14, "rounding"));
    }

    TEST_CASE("a corner cut shorter than the inset takes away is dropped, not turned round") {
        const Polygon cut{{0.0, 0.0}, {4.0, 0.0}, {4.0, 1.9}, {3.9, 2.0}, {0.0, 2.0}};
        // The cut is 0.1414 long and loses 2 tan(22.5 deg) = 0.828 of the distance: gone at 0.171.
        const Polygon in = geometry::inset(cut, 0.5);
        REQUIRE(in.size() == 4);
        check_close(geometry::signed_area(in), 3.0 * 1.0, absolute(1e-14, "rounding"));
    }

    TEST_CASE("property: every corner left stands at the distance from its sides, none nearer") {
        std::mt19937 random(61);
        std::uniform_real_distribution<double> distance(0.01, 1.2);
        int left = 0;
        for (int i = 0; i < 2000; ++i) {
            INFO("seed 61, case ", i);
            const Polygon polygon = random_convex(random, 3 + i % 20);
            const double d = distance(random);
            const Polygon in = geometry::inset(polygon, d);
            if (in.empty()) continue;
            ++left;
            for (const glm::dvec2 p : in)
                check_close(depth(polygon, p), d, absolute(1e-6, "sides all but parallel"));
        }
        CHECK(left > 300);
    }
}
