// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

namespace rakeline::room {
namespace {

using base::Unit;

/// A standard uncertainty as a share of its factor.
void share(FieldVisitor& v, const Words& words, double& value) {
    v.number({words, Unit::fraction, 0.0, 0.5}, value);
}

void reflectance(FieldVisitor& v, const Words& words, double& value) {
    v.number({words, Unit::fraction, 0.0, 0.95}, value);
}

}  // namespace

void describe(FieldVisitor& v, FluxTolerances& x) {
    share(v, {"measured_flux_fraction", "Measured flux", "Of the measured or rated flux."},
          x.measured_flux);
    share(v, {"lamp_power_fraction", "Lamp power", "Of lamp current and voltage together."},
          x.lamp_power);
    share(v, {"lamp_efficacy_fraction", "Lamp efficacy", "Of the flux that a watt gives."},
          x.lamp_efficacy);
    share(v, {"ageing_fraction", "Ageing", "Of what is left of the new lamp."}, x.ageing);
    share(v, {"collection_fraction", "Collection", "Of what reaches the gate or imager."},
          x.collection);
    share(v, {"shutter_fraction", "Shutter", "Of the time that it is open."}, x.shutter);
    share(v, {"gate_fraction", "Gate or imager", "Of what passes it."}, x.gate);
    share(v, {"lens_fraction", "Lens", "Of its transmittance."}, x.lens);
    share(v, {"port_fraction", "Port", "Of the transmittance of the glass, dust on it too."},
          x.port);
    share(v, {"gain_fraction", "Gain", "Of the gain toward a seat."}, x.gain);
}

void describe(FieldVisitor& v, Supply& x) {
    v.number({{"lamp_power_most_w", "Largest lamp", "That the lamphouse takes."},
              Unit::watt,
              1.0,
              20000.0},
             x.lamp_power_most_w);
    v.number({{"efficiency_fraction", "Supply efficiency", "Lamp power over power from the mains."},
              Unit::fraction,
              0.2,
              1.0},
             x.efficiency_fraction);
    v.number(
        {{"end_flux_fraction", "Flux at the end", "At which a lamp is taken out, over when new."},
         Unit::fraction,
         0.1,
         1.0},
        x.end_flux_fraction);
    v.number({{"lamp_life_s", "Lamp life", "Hours until a lamp is taken out."},
              Unit::hour,
              3600.0,
              3.6e8},
             x.lamp_life_s);
    v.number(
        {{"lamp_price", "Lamp price", "Of a new lamp or light source."}, Unit::money, 0.0, 1e6},
        x.lamp_price);
    v.number({{"heat_fraction", "Heat to the exhaust",
               "Share of the lamp power that the exhaust air carries off."},
              Unit::fraction,
              0.0,
              1.0},
             x.heat_fraction);
    v.number({{"exhaust_flow_m3_s", "Exhaust flow", "Air that the duct draws from the lamphouse."},
              Unit::air_flow,
              0.001,
              10.0},
             x.exhaust_flow_m3_s);
    v.number({{"exhaust_rise_most_k", "Exhaust rise, most",
               "By which the air in the duct may get warmer."},
              Unit::kelvin,
              1.0,
              200.0},
             x.exhaust_rise_most_k);
}

void describe(FieldVisitor& v, HouseLight& x) {
    v.text({"name", "Name", "What the light is."}, x.name);
    v.number({{"across_m", "Across", "Where it hangs."}, Unit::metre, -kFar, kFar}, x.across_m);
    v.number({{"up_m", "Up", "Where it hangs."}, Unit::metre, -20.0, 60.0}, x.up_m);
    v.number({{"back_m", "Back", "Where it hangs, from the screen wall."}, Unit::metre, 0.0, kFar},
             x.back_m);
    v.number(
        {{"flux_lm", "Flux", "That it sends into the hall, all round."}, Unit::lumen, 0.0, 10000.0},
        x.flux_lm);
}

void describe(FieldVisitor& v, StrayLight& x) {
    list(v,
         {{"lights", "Lights", "That stay on during the show: exit signs, aisle lights."},
          "light",
          200},
         x.lights);
    reflectance(v,
                {"wall_reflectance", "Walls", "Diffuse reflectance of the side and booth walls."},
                x.wall_reflectance);
    reflectance(v, {"ceiling_reflectance", "Ceiling", "Diffuse reflectance."},
                x.ceiling_reflectance);
    reflectance(v, {"floor_reflectance", "Floor", "Diffuse reflectance of what no seats cover."},
                x.floor_reflectance);
    reflectance(v,
                {"audience_reflectance", "Audience",
                 "Diffuse reflectance of the floor that seats cover, people in them."},
                x.audience_reflectance);
}

void describe(FieldVisitor& v, Programme& x) {
    v.number(
        {{"show_s", "Show", "Hours that the lamp burns for one show."}, Unit::hour, 60.0, 86400.0},
        x.show_s);
    v.integer({{"shows_per_year", "Shows a year", "On each screen machine in use."}, 0, 20000},
              x.shows_per_year);
    v.number({{"energy_price", "Energy price", "Of a kilowatt hour."}, Unit::money, 0.0, 1000.0},
             x.energy_price);
    v.text({"currency", "Currency", "What prices are counted in."}, x.currency);
}

}  // namespace rakeline::room
