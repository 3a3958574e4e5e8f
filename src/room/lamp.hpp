// SPDX-License-Identifier: MIT
#pragma once

/// The light source of a projector, part of the document (layout.hpp): the chain from the lamp to
/// the lens, how well each factor is known, and what the lamp needs and costs. SI inside.
namespace rakeline::room {

enum class LampKind { xenon, laser };
enum class FluxEntry {
    measured,  ///< FluxChain::measured_flux_lm is given
    chain,     ///< from the lamp, factor by factor
};

/// Standard uncertainty of each factor as a share of it; 0: taken as exact.
struct FluxTolerances {
    double measured_flux = 0.05;
    double lamp_power = 0.02;
    double lamp_efficacy = 0.05;
    double ageing = 0.05;
    double collection = 0.05;
    double shutter = 0.02;
    double gate = 0.03;
    double lens = 0.02;
    double port = 0.02;
    double gain = 0.05;
    bool operator==(const FluxTolerances&) const = default;
};

/// Flux out of the lens with the whole lit gate or imager in use, no film, shutter running.
struct FluxChain {
    FluxEntry entry = FluxEntry::measured;
    double measured_flux_lm = 8000.0;
    LampKind lamp = LampKind::xenon;
    double lamp_current_a = 80.0;
    double lamp_voltage_v = 25.0;
    double lamp_efficacy_lm_w = 37.0;
    double ageing_fraction = 0.85;      ///< of the new lamp's flux
    double collection_fraction = 0.30;  ///< lamp flux that reaches the gate or imager
    double shutter_fraction = 0.50;     ///< 1 for digital
    double gate_fraction = 0.85;        ///< through the gate cooling glass, or off the imager
    double lens_transmittance = 0.85;
    double corner_fraction = 0.75;  ///< gate illuminance at the lit corner over the peak
    double hot_spot_across = 0.0;   ///< peak away from gate centre, in gate widths, on screen
    double hot_spot_up = 0.0;       ///< in gate heights, on screen
    FluxTolerances tolerances;
    bool operator==(const FluxChain&) const = default;
};

/// What feeds, cools and pays for a lamp. Money in whatever the layout counts in.
struct Supply {
    double lamp_power_most_w = 3000.0;  ///< the largest lamp that the lamphouse takes
    double efficiency_fraction = 0.85;  ///< lamp power over power from the mains
    double end_flux_fraction = 0.7;     ///< flux at which a lamp is taken out, over when new
    double lamp_life_s = 1500.0 * 3600.0;
    double lamp_price = 600.0;
    double heat_fraction = 0.8;         ///< of lamp power, into the exhaust air
    double exhaust_flow_m3_s = 0.15;    ///< that the duct draws
    double exhaust_rise_most_k = 30.0;  ///< of the air in the duct
    bool operator==(const Supply&) const = default;
};

}  // namespace rakeline::room
