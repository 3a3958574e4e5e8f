// SPDX-License-Identifier: MIT
#include "light/gate_light.hpp"

#include "light/quadrature.hpp"
#include "support/check.hpp"

#include <random>

using namespace rakeline;
using light::GateLight;
using tests::check_close;

namespace {

GateLight random_light(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    GateLight light;
    light.lit_size_m = {0.01 + 0.03 * unit(random), 0.008 + 0.02 * unit(random)};
    light.corner_fraction = unit(random);
    light.hot_spot_m = light.lit_size_m * glm::dvec2(unit(random) - 0.5, unit(random) - 0.5);
    return light;
}

double by_quadrature(const GateLight& light, glm::dvec2 size_m, int panels) {
    const glm::dvec2 half = 0.5 * size_m;
    return half.x * half.y * tests::square_integral(panels, [&](double x, double y) {
               return light::relative_illuminance(light, {half.x * x, half.y * y});
           });
}

}  // namespace

TEST_SUITE("light/gate_light") {
    TEST_CASE("the peak is 1 at the hot spot and the corners have their fraction of it") {
        GateLight light{{0.021, 0.018}, {0.0, 0.0}, 0.7};
        CHECK(light::relative_illuminance(light, {0.0, 0.0}) == 1.0);
        check_close(light::relative_illuminance(light, {-0.0105, 0.009}), 0.7,
                    tests::relative(1e-14, "rounding"));
        light.hot_spot_m = {0.003, -0.002};
        CHECK(light::relative_illuminance(light, {0.003, -0.002}) == 1.0);
        CHECK(light::relative_illuminance(light, {0.0, 0.0}) < 1.0);
    }

    TEST_CASE("fall-off is the same in every direction from the hot spot") {
        const GateLight light{{0.03, 0.02}, {0.0, 0.0}, 0.5};
        CHECK(light::relative_illuminance(light, {0.008, 0.0}) ==
              light::relative_illuminance(light, {0.0, 0.008}));
    }

    TEST_CASE("there is no light outside the lit area") {
        const GateLight light{{0.02, 0.01}, {0.0, 0.0}, 1.0};
        CHECK(light::relative_illuminance(light, {0.0101, 0.0}) == 0.0);
        CHECK(light::relative_illuminance(light, {0.0, -0.0051}) == 0.0);
        CHECK(light::relative_illuminance(light, {0.0099, -0.0049}) == 1.0);
    }

    TEST_CASE("an even gate passes flux by area") {
        const GateLight light{{0.02, 0.01}, {0.004, -0.002}, 1.0};
        check_close(light::use_fraction(light, {0.01, 0.008}), 0.4,
                    tests::relative(1e-14, "rounding"));
    }

    TEST_CASE("a part larger than the lit area uses all of the light and no more") {
        const GateLight light{{0.02, 0.01}, {0.001, 0.0}, 0.6};
        CHECK(light::use_fraction(light, {0.05, 0.05}) == 1.0);
        CHECK(light::use_fraction(light, {0.02, 0.01}) == 1.0);
    }

    TEST_CASE("property: the closed form is the integral where the law does not reach zero") {
        std::mt19937 random(31);
        for (int i = 0; i < 50; ++i) {
            GateLight light = random_light(random);
            light.corner_fraction = 0.8 + 0.2 * light.corner_fraction;
            light.hot_spot_m *= 0.5;
            const glm::dvec2 part = 0.7 * light.lit_size_m;
            check_close(light::lit_integral_m2(light, part), by_quadrature(light, part, 1),
                        tests::relative(1e-12, "the rule is exact for a quadratic"));
        }
    }

    TEST_CASE("property: the closed form is the integral where the law is clamped at zero") {
        std::mt19937 random(32);
        int clamped = 0;
        for (int i = 0; i < 60; ++i) {
            GateLight light = random_light(random);
            light.corner_fraction *= 0.3;
            light.hot_spot_m *= i % 3 == 0 ? 1.0 : 2.0;  // up to a whole gate away
            const double direct = by_quadrature(light, light.lit_size_m, 40);
            const glm::dvec2 far_corner{-std::copysign(0.5, light.hot_spot_m.x),
                                        -std::copysign(0.5, light.hot_spot_m.y)};
            if (light::relative_illuminance(light, far_corner * light.lit_size_m) == 0.0) ++clamped;
            check_close(light::lit_integral_m2(light, light.lit_size_m), direct,
                        tests::relative(2e-5, "the kink at zero slows the quadrature"));
        }
        CHECK(clamped > 20);
    }

    TEST_CASE("property: the middle of the gate uses more than its share of the area") {
        std::mt19937 random(33);
        std::uniform_real_distribution<double> part(0.2, 0.95);
        for (int i = 0; i < 50; ++i) {
            GateLight light = random_light(random);
            light.hot_spot_m = {0.0, 0.0};
            light.corner_fraction = 0.05 + 0.9 * light.corner_fraction;
            const double scale = part(random);
            const double used = light::use_fraction(light, scale * light.lit_size_m);
            CHECK(used > scale * scale);
            CHECK(used < 1.0);
        }
    }

    TEST_CASE("film is lit where the lamp lights, digital over the whole imager") {
        room::Projector projector;
        projector.flux.hot_spot_across = 0.1;
        projector.flux.hot_spot_up = -0.25;
        projector.flux.corner_fraction = 0.66;
        projector.lit_width_m = 0.022;
        projector.lit_height_m = 0.018;
        projector.imager = {2048, 1080, 10e-6};

        projector.kind = room::SourceKind::film;
        const GateLight film = light::gate_light(projector);
        CHECK(film.lit_size_m == glm::dvec2(0.022, 0.018));
        check_close(film.hot_spot_m.x, 0.0022, tests::relative(1e-14, "rounding"));
        check_close(film.hot_spot_m.y, -0.0045, tests::relative(1e-14, "rounding"));
        CHECK(film.corner_fraction == 0.66);

        projector.kind = room::SourceKind::digital;
        const GateLight digital = light::gate_light(projector);
        check_close(digital.lit_size_m.x, 0.02048, tests::relative(1e-14, "rounding"));
        check_close(digital.lit_size_m.y, 0.0108, tests::relative(1e-14, "rounding"));
    }
}
