// SPDX-License-Identifier: MIT
#include "light/nine_values.hpp"

#include "support/check.hpp"

#include <random>

using namespace rakeline;
using light::NineValues;
using tests::check_close;

namespace {

const tests::Tolerance kRounding = tests::absolute(1e-12, "sums of a dozen terms near 1");

template <class Field>
NineValues sampled(Field field) {
    NineValues out{};
    for (int i = 0; i < 9; ++i)
        out[static_cast<std::size_t>(i)] = field(light::nine_place(i));
    return out;
}

}  // namespace

TEST_SUITE("light/nine_values") {
    TEST_CASE("property: a surface quadratic along x and along y is read back exactly") {
        std::mt19937 random(310);
        std::uniform_real_distribution<double> any(-1.0, 1.0);
        for (int n = 0; n < 200; ++n) {
            double c[9];
            for (double& k : c)
                k = any(random);
            const auto field = [&](glm::dvec2 p) {
                const glm::dvec3 x{1.0, p.x, p.x * p.x};
                const glm::dvec3 rows{glm::dot(x, {c[0], c[1], c[2]}),
                                      glm::dot(x, {c[3], c[4], c[5]}),
                                      glm::dot(x, {c[6], c[7], c[8]})};
                return glm::dot(rows, {1.0, p.y, p.y * p.y});
            };
            const glm::dvec2 place{any(random), any(random)};
            check_close(light::through_nine(sampled(field), place), field(place), kRounding);
        }
    }

    TEST_CASE("golden: the top of a tilted hill, by hand") {
        // -(x - 0.3)^2 - 2 (y + 0.2)^2 + (x - 0.3)(y + 0.2) has its slopes nothing at (0.3, -0.2).
        const glm::dvec2 top = light::top_of_nine(sampled([](glm::dvec2 p) {
            const glm::dvec2 d = p - glm::dvec2(0.3, -0.2);
            return -d.x * d.x - 2.0 * d.y * d.y + d.x * d.y;
        }));
        check_close(top.x, 0.3, kRounding);
        check_close(top.y, -0.2, kRounding);
    }

    TEST_CASE("property: no place of a fine grid stands higher than the top found") {
        std::mt19937 random(311);
        std::uniform_real_distribution<double> any(-1.0, 1.0);
        for (int n = 0; n < 300; ++n) {
            const glm::dvec2 slope{any(random), any(random)};
            const glm::dvec2 bend{any(random), any(random)};
            const double twist = any(random);
            const auto field = [&](glm::dvec2 p) {
                return glm::dot(slope, p) + 0.5 * glm::dot(bend, p * p) + twist * p.x * p.y;
            };
            const glm::dvec2 top = light::top_of_nine(sampled(field));
            CHECK(std::abs(top.x) <= 1.0);
            CHECK(std::abs(top.y) <= 1.0);
            for (int i = 0; i <= 40; ++i) {
                for (int k = 0; k <= 40; ++k) {
                    const glm::dvec2 place = glm::dvec2(i, k) / 20.0 - 1.0;
                    CHECK(field(place) <= field(top) + 1e-12);
                }
            }
        }
    }

    TEST_CASE("an even field has its top in the middle") {
        CHECK(light::top_of_nine(sampled([](glm::dvec2) { return 3.0; })) == glm::dvec2(0.0));
    }
}
