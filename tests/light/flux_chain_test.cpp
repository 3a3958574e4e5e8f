// SPDX-License-Identifier: MIT
#include "light/flux_chain.hpp"

#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;

TEST_SUITE("light/flux_chain") {
    TEST_CASE("a measured flux is taken as it is, and its lamp is not guessed") {
        room::FluxChain chain;
        chain.entry = room::FluxEntry::measured;
        chain.measured_flux_lm = 12345.0;
        const light::FluxOut out = light::flux_out(chain);
        CHECK(out.lens_flux_lm == 12345.0);
        CHECK(out.lamp_flux_lm == 0.0);
    }

    TEST_CASE("a 2 kW lamp is followed factor by factor") {
        room::FluxChain chain;
        chain.entry = room::FluxEntry::chain;
        chain.lamp_current_a = 80.0;
        chain.lamp_voltage_v = 25.0;
        chain.lamp_efficacy_lm_w = 37.0;
        chain.ageing_fraction = 0.5;
        chain.collection_fraction = 0.25;
        chain.shutter_fraction = 0.5;
        chain.gate_fraction = 0.8;
        chain.lens_transmittance = 0.9;
        const light::FluxOut out = light::flux_out(chain);
        // By hand: 2000 W x 37 = 74,000 lm new, 37,000 lm now; x 0.25 x 0.5 x 0.8 x 0.9 = 3330 lm.
        check_close(out.lamp_flux_lm, 37000.0, tests::relative(1e-14, "rounding"));
        check_close(out.lens_flux_lm, 3330.0, tests::relative(1e-14, "rounding"));
    }

    TEST_CASE("every factor of the chain counts once") {
        room::FluxChain chain;
        chain.entry = room::FluxEntry::chain;
        const double before = light::flux_out(chain).lens_flux_lm;
        for (double room::FluxChain::*factor :
             {&room::FluxChain::lamp_current_a, &room::FluxChain::lamp_voltage_v,
              &room::FluxChain::lamp_efficacy_lm_w, &room::FluxChain::ageing_fraction,
              &room::FluxChain::collection_fraction, &room::FluxChain::shutter_fraction,
              &room::FluxChain::gate_fraction, &room::FluxChain::lens_transmittance}) {
            room::FluxChain halved = chain;
            halved.*factor *= 0.5;
            check_close(light::flux_out(halved).lens_flux_lm, 0.5 * before,
                        tests::relative(1e-14, "rounding"));
        }
    }
}
