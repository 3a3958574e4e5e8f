// SPDX-License-Identifier: MIT
#include "geometry/homography.hpp"

#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("geometry/homography") {
    TEST_CASE("a perspective map divides by its third line") {
        // Columns: image of (1,0,0), (0,1,0) and (0,0,1).
        const glm::dmat3 map(glm::dvec3(2, 0, 0.5), glm::dvec3(0, 4, 0), glm::dvec3(1, -1, 1));
        const auto p = geometry::mapped(map, {2.0, 3.0});
        REQUIRE(p);
        CHECK(*p == glm::dvec2(2.5, 5.5));
    }

    TEST_CASE("refuses: a point on the vanishing line has no image") {
        const glm::dmat3 map(glm::dvec3(1, 0, 1), glm::dvec3(0, 1, 0), glm::dvec3(0, 0, -1));
        CHECK_FALSE(geometry::mapped(map, {1.0, 7.0}));
        CHECK(geometry::mapped(map, {2.0, 7.0}));
    }
}
