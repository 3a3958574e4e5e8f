// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::Unit;

constexpr auto kLamps = std::to_array<const char*>({"xenon", "laser"});
constexpr auto kFluxEntries = std::to_array<const char*>({"measured", "chain"});

}  // namespace

void describe(FieldVisitor& v, Port& x) {
    v.number({{"across_m", "Across", "Centre of the port."}, Unit::metre, -kFar, kFar}, x.across_m);
    v.number({{"up_m", "Up", "Centre of the port."}, Unit::metre, -20.0, 60.0}, x.up_m);
    v.number({{"width_m", "Width", "Clear opening."}, Unit::metre, 0.02, 5.0}, x.width_m);
    v.number({{"height_m", "Height", "Clear opening."}, Unit::metre, 0.02, 5.0}, x.height_m);
    v.integer({{"panes", "Panes", "Sheets of glass in the port; 0 for an open port."}, 0, 4},
              x.panes);
    v.number({{"glass_index", "Refractive index", "Of the glass."}, Unit::ratio, 1.3, 2.0},
             x.glass_index);
    v.number(
        {{"glass_thickness_m", "Glass thickness", "Of one pane."}, Unit::millimetre, 0.001, 0.05},
        x.glass_thickness_m);
    v.number({{"glass_absorption_per_m", "Glass absorption",
               "Per metre of glass; internal transmittance is exp(-absorption x path)."},
              Unit::ratio,
              0.0,
              100.0},
             x.glass_absorption_per_m);
    v.optional_number({{"coated_reflectance", "Coated reflectance",
                        "Reflectance of one coated surface; leave out for bare glass."},
                       Unit::fraction,
                       0.0,
                       0.5},
                      x.coated_reflectance);
}

void describe(FieldVisitor& v, FluxChain& x) {
    choice(v, {"entry", "Flux from", "A measured or rated flux, or the chain from the lamp on."},
           kFluxEntries, x.entry);
    v.number({{"measured_flux_lm", "Measured flux",
               "Out of the lens, whole lit gate or imager, no film, shutter running."},
              Unit::lumen,
              1.0,
              500000.0},
             x.measured_flux_lm);
    choice(v, {"lamp", "Lamp", "Kind of light source."}, kLamps, x.lamp);
    v.number({{"lamp_current_a", "Lamp current", "At the lamp."}, Unit::ampere, 0.1, 400.0},
             x.lamp_current_a);
    v.number({{"lamp_voltage_v", "Lamp voltage", "At the lamp."}, Unit::volt, 1.0, 400.0},
             x.lamp_voltage_v);
    v.number({{"lamp_efficacy_lm_w", "Lamp efficacy", "Luminous flux per electrical power, new."},
              Unit::lumen_per_watt,
              1.0,
              300.0},
             x.lamp_efficacy_lm_w);
    v.number(
        {{"ageing_fraction", "Ageing", "Flux now over flux when new."}, Unit::fraction, 0.05, 1.0},
        x.ageing_fraction);
    v.number({{"collection_fraction", "Collection", "Lamp flux that reaches the gate or imager."},
              Unit::fraction,
              0.001,
              1.0},
             x.collection_fraction);
    v.number({{"shutter_fraction", "Shutter", "Time that the shutter is open; 100 % for digital."},
              Unit::fraction,
              0.1,
              1.0},
             x.shutter_fraction);
    v.number({{"gate_fraction", "Gate or imager",
               "Transmission of the gate, or efficiency of the imager."},
              Unit::fraction,
              0.01,
              1.0},
             x.gate_fraction);
    v.number(
        {{"lens_transmittance", "Lens", "Transmittance of the lens."}, Unit::fraction, 0.1, 1.0},
        x.lens_transmittance);
    v.number(
        {{"corner_fraction", "Corner to peak", "Gate illuminance at the lit corner over the peak."},
         Unit::fraction,
         0.05,
         1.0},
        x.corner_fraction);
    v.number({{"hot_spot_across", "Hot spot across",
               "Peak away from the gate's centre, in gate widths."},
              Unit::ratio,
              -0.5,
              0.5},
             x.hot_spot_across);
    v.number({{"hot_spot_up", "Hot spot up", "Peak away from the gate's centre, in gate heights."},
              Unit::ratio,
              -0.5,
              0.5},
             x.hot_spot_up);
    group(v,
          {"tolerances", "Tolerances",
           "Standard uncertainty of each factor, as a share of it; 0 for exact."},
          x.tolerances);
}

}  // namespace rakeline::room
