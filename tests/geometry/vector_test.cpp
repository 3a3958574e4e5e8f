// SPDX-License-Identifier: MIT
#include "geometry/vector.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("geometry/vector") {
    TEST_CASE("a tiny angle keeps its digits where an arc cosine would lose them") {
        const glm::dvec3 a(1.0, 0.0, 0.0);
        check_close(geometry::angle_between(a, {1.0, 1e-9, 0.0}), 1e-9,
                    relative(1e-12, "rounding"));
        check_close(geometry::angle_between(a, {-1.0, 1e-9, 0.0}), base::kPi - 1e-9,
                    relative(1e-15, "rounding"));
    }

    TEST_CASE("lengths do not change an angle") {
        check_close(geometry::angle_between({3.0, 0.0, 0.0}, {0.5, 0.5, 0.0}), base::kPi / 4.0,
                    relative(1e-15, "rounding"));
    }

    TEST_CASE("a turn about the vertical goes from back toward right") {
        const glm::dvec3 turned = geometry::turned_about_up({0.0, 2.0, 1.0}, base::radians(90.0));
        check_close(turned.x, 1.0, absolute(1e-15, "rounding"));
        check_close(turned.y, 2.0, absolute(0.0, "untouched"));
        check_close(turned.z, 0.0, absolute(1e-15, "rounding"));
    }

    TEST_CASE("property: a turn about the vertical keeps lengths and comes back") {
        std::mt19937 random(11);
        std::uniform_real_distribution<double> any(-5.0, 5.0);
        for (int i = 0; i < 1000; ++i) {
            const glm::dvec3 p(any(random), any(random), any(random));
            const double angle = any(random);
            const glm::dvec3 there = geometry::turned_about_up(p, angle);
            check_close(glm::length(there), glm::length(p), relative(1e-14, "rounding"));
            const glm::dvec3 back = geometry::turned_about_up(there, -angle);
            check_close(glm::length(back - p), 0.0, absolute(1e-14, "rounding"));
        }
    }

    TEST_CASE("a ray is measured in lengths of its direction") {
        const geometry::Ray ray{{1.0, 2.0, 3.0}, {0.0, 0.0, -2.0}};
        CHECK(ray.at(1.5) == glm::dvec3(1.0, 2.0, 0.0));
    }
}
