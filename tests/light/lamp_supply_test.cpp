// SPDX-License-Identifier: MIT
#include "light/lamp_supply.hpp"

#include "support/check.hpp"

#include <random>

using namespace rakeline;
using tests::check_close;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-13, "rounding");

room::FluxChain lamp(double volts, double amperes) {
    room::FluxChain chain;
    chain.lamp_voltage_v = volts;
    chain.lamp_current_a = amperes;
    return chain;
}

}  // namespace

TEST_SUITE("light/lamp_supply") {
    TEST_CASE("a 2 kW lamp, its duct and its bill, worked by hand") {
        room::FluxChain chain = lamp(25.0, 80.0);
        chain.ageing_fraction = 0.8;
        room::Supply supply;
        supply.end_flux_fraction = 0.6;
        supply.lamp_life_s = 1500.0 * 3600.0;
        supply.lamp_price = 600.0;
        supply.heat_fraction = 0.75;
        supply.efficiency_fraction = 0.8;
        CHECK(light::lamp_power_w(chain) == 2000.0);
        // A quarter more light: 2000 x 1.25 x 0.8 = 2000 W of a new lamp, / 0.6 = 3333 W at the
        // end.
        check_close(light::lamp_power_wanted_w(chain, 1.25, 1.0), 2000.0, kRounding);
        check_close(light::lamp_power_wanted_w(chain, 1.25, 0.6), 10000.0 / 3.0, kRounding);
        // Half of the fall from 1 to 0.6 is gone: half of 1500 h is left.
        check_close(*light::lamp_time_left_s(chain, supply), 750.0 * 3600.0, kRounding);
        CHECK(light::exhaust_heat_w(chain, supply) == 1500.0);
        // At 20 degrees 1.20411 kg/m3: 1500 / (1.20411 x 1006 x 30) = 0.041277 m3/s.
        check_close(light::exhaust_flow_needed_m3_s(1500.0, 30.0, 20.0), 0.041277,
                    tests::printed_digits(6));
        // Two hours of 2.5 kW are 5 kWh at 0.2; the lamp wears by 600 x 2 / 1500 = 0.8.
        const light::ShowCost cost = light::show_cost(
            chain, supply, {.show_s = 7200.0, .shows_per_year = 1, .energy_price = 0.2});
        check_close(cost.lamp, 0.8, kRounding);
        check_close(cost.energy, 1.0, kRounding);
        check_close(cost.total(), 1.8, kRounding);
    }

    TEST_CASE("golden: usual xenon lamps by their current and voltage (from memory)") {
        // Trade table, from memory: 1 kW 20 V 50 A, 2 kW 25 V 80 A, 3 kW 29 V 100 A, 4 kW 30 V
        // 135 A. Current and voltage are round figures, 4 % of the rating at most beside it.
        struct Row {
            double rating_w, volts, amperes;
        };
        for (const Row& row :
             {Row{1000, 20, 50}, {2000, 25, 80}, {3000, 29, 100}, {4000, 30, 135}}) {
            const double power_w = light::lamp_power_w(lamp(row.volts, row.amperes));
            check_close(power_w, row.rating_w, tests::relative(0.04, "round figures, as said"));
            CHECK(light::usual_lamp_w(0.96 * power_w) == row.rating_w);
        }
    }

    TEST_CASE("a lamp of the usual sizes is the next one up, and none reaches over 12 kW") {
        CHECK(light::usual_lamp_w(1.0) == 900.0);
        CHECK(light::usual_lamp_w(3000.0) == 3000.0);
        CHECK(light::usual_lamp_w(3000.1) == 4000.0);
        CHECK(light::usual_lamp_w(12000.0) == 12000.0);
        CHECK_FALSE(light::usual_lamp_w(12000.1));
    }

    TEST_CASE("a lamp past its end has no time left, and one that never fades no end") {
        room::FluxChain chain;
        room::Supply supply;
        chain.ageing_fraction = 0.5;
        CHECK(light::lamp_time_left_s(chain, supply) == 0.0);
        chain.ageing_fraction = 1.0;
        check_close(*light::lamp_time_left_s(chain, supply), supply.lamp_life_s, kRounding);
        supply.end_flux_fraction = 1.0;
        CHECK_FALSE(light::lamp_time_left_s(chain, supply));
    }

    TEST_CASE("property: the flow that is needed gives the rise that was allowed") {
        std::mt19937 random(821);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 100; ++i) {
            const double heat_w = 100.0 + 8000.0 * unit(random);
            const double rise_k = 5.0 + 60.0 * unit(random);
            const double celsius = 10.0 + 25.0 * unit(random);
            const double flow = light::exhaust_flow_needed_m3_s(heat_w, rise_k, celsius);
            check_close(light::exhaust_rise_k(heat_w, flow, celsius), rise_k, kRounding);
            CHECK(light::exhaust_rise_k(heat_w, 2.0 * flow, celsius) < rise_k);
            CHECK(light::exhaust_flow_needed_m3_s(heat_w, rise_k, celsius + 5.0) > flow);
        }
    }
}
