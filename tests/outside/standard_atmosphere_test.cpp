// SPDX-License-Identifier: MIT
//
// Air for the exhaust of a lamphouse: density of the standard atmosphere at sea level, 15 degrees,
// 1.225 kg/m3 (ISO 2533:1975; from memory), of dry air at 20 degrees 1.204 kg/m3 (handbook tables,
// from memory), and the ventilation trade's rule Q = 1.08 V dT with Q in Btu/h, V in ft3/min and dT
// in Fahrenheit degrees for standard air at 70 F (ASHRAE handbook, from memory).
#include "light/lamp_supply.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;

TEST_SUITE("outside/standard atmosphere") {
    TEST_CASE("golden: density of the standard atmosphere at sea level and of air at 20 degrees") {
        check_close(light::air_density_kg_m3(15.0), 1.225, tests::printed_digits(3));
        check_close(light::air_density_kg_m3(20.0), 1.204, tests::printed_digits(3));
    }

    TEST_CASE("golden: a kilowatt in a duct by the ventilation trade's rule") {
        const double btu_h = 1000.0 / 0.29307107;
        const double ft3_min = btu_h / (1.08 * 36.0);
        const double m3_s = light::exhaust_flow_needed_m3_s(1000.0, 20.0, (70.0 - 32.0) / 1.8);
        check_close(m3_s / 0.0283168466 * 60.0, ft3_min,
                    tests::relative(0.01,
                                    "1.08 is rounded to its third digit, and its air is "
                                    "0.075 lb/ft3, rounded to the second"));
    }
}
