// SPDX-License-Identifier: MIT
#include "light/flux_chain.hpp"

namespace rakeline::light {

FluxOut flux_out(const room::FluxChain& chain) {
    if (chain.entry == room::FluxEntry::measured) {
        return {.lamp_flux_lm = 0.0, .lens_flux_lm = chain.measured_flux_lm};
    }
    const double power_w = chain.lamp_voltage_v * chain.lamp_current_a;
    const double lamp_lm = power_w * chain.lamp_efficacy_lm_w * chain.ageing_fraction;
    const double passed = chain.collection_fraction * chain.shutter_fraction * chain.gate_fraction *
                          chain.lens_transmittance;
    return {.lamp_flux_lm = lamp_lm, .lens_flux_lm = lamp_lm * passed};
}

}  // namespace rakeline::light
