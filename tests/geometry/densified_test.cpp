// SPDX-License-Identifier: MIT
#include "geometry/densified.hpp"

#include "geometry/polygon.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;

TEST_SUITE("geometry/densified") {
    TEST_CASE("no edge is longer than the step, corners and area stay") {
        const std::vector<glm::dvec2> corners{{0.0, 0.0}, {3.0, 0.0}, {3.0, 1.0}, {0.0, 2.0}};
        const auto fine = geometry::densified(corners, 0.25);
        for (std::size_t i = 0; i < fine.size(); ++i)
            CHECK(glm::length(fine[(i + 1) % fine.size()] - fine[i]) <= 0.25 + 1e-12);
        for (const glm::dvec2& corner : corners)
            CHECK(std::find(fine.begin(), fine.end(), corner) != fine.end());
        tests::check_close(geometry::signed_area(fine), geometry::signed_area(corners),
                           tests::relative(1e-12, "rounding"));
    }

    TEST_CASE("a step longer than every edge adds nothing") {
        const std::vector<glm::dvec2> corners{{0.0, 0.0}, {1.0, 0.0}, {0.0, 1.0}};
        CHECK(geometry::densified(corners, 5.0) == corners);
    }
}
