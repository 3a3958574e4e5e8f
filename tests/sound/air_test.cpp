// SPDX-License-Identifier: MIT
#include "sound/air.hpp"

#include "sound/air_absorption.hpp"
#include "support/check.hpp"

using rakeline::sound::Air;
using rakeline::sound::air_absorption_db_per_m;
using namespace rakeline::tests;

TEST_SUITE("sound/air") {
    TEST_CASE("golden: air at 20 degrees") {
        // Source: usual handbook values of dry air at one atmosphere, from memory.
        const Air air;
        check_close(air.density_kg_m3(), 1.204, printed_digits(3));
        check_close(air.sound_speed_m_s(), 343.2, printed_digits(1));
        check_close(air.viscosity_pa_s() * 1e5, 1.81, printed_digits(2));
    }

    TEST_CASE("warmer air is thinner, faster and more viscous; pressure only makes it denser") {
        const Air cold{.temperature_c = 0.0};
        const Air warm{.temperature_c = 30.0};
        CHECK(warm.density_kg_m3() < cold.density_kg_m3());
        CHECK(warm.sound_speed_m_s() > cold.sound_speed_m_s());
        CHECK(warm.viscosity_pa_s() > cold.viscosity_pa_s());
        const Air high{.temperature_c = 0.0, .pressure_pa = 2 * 101325.0};
        check_close(high.density_kg_m3(), 2.0 * cold.density_kg_m3(), relative(1e-14, "rounding"));
        CHECK(high.sound_speed_m_s() == cold.sound_speed_m_s());
    }
}

TEST_SUITE("sound/air_absorption") {
    TEST_CASE("property: air takes more of a higher tone") {
        for (const double temperature : {5.0, 20.0, 35.0}) {
            for (const double humidity : {0.1, 0.4, 0.7, 1.0}) {
                const Air air{.temperature_c = temperature, .humidity_fraction = humidity};
                double before = 0.0;
                for (double f = 50.0; f < 20000.0; f *= 1.1) {
                    INFO("at ", temperature, " degC, humidity ", humidity, ", ", f, " Hz");
                    const double now = air_absorption_db_per_m(f, air);
                    CHECK(now > before);
                    before = now;
                }
            }
        }
    }

    TEST_CASE("air of a usual room takes most at 10 kHz when it is rather dry") {
        const auto at = [](double humidity) {
            return air_absorption_db_per_m(10000.0, {.humidity_fraction = humidity});
        };
        CHECK(at(0.2) > at(0.5));
        CHECK(at(0.5) > at(0.8));
        CHECK(at(0.2) > at(0.02));
    }
}
