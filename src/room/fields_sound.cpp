// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::radians;
using base::Unit;

constexpr auto kChannels =
    std::to_array<const char*>({"left", "centre", "right", "sub_bass", "surround"});
constexpr auto kDirectivities = std::to_array<const char*>({"piston", "horn"});

/// A whole angle between -6 dB directions.
void coverage(FieldVisitor& v, const Words& words, double& value) {
    v.number({words, Unit::radian, radians(10.0), radians(180.0)}, value);
}

void cabinet_side(FieldVisitor& v, const Words& words, double& value) {
    v.number({words, Unit::metre, 0.05, 5.0}, value);
}

void describe_cabinet(FieldVisitor& v, Loudspeaker& x) {
    cabinet_side(v, {"cabinet_width_m", "Cabinet width", "Outside."}, x.cabinet_width_m);
    cabinet_side(v, {"cabinet_height_m", "Cabinet height", "Outside."}, x.cabinet_height_m);
    cabinet_side(v, {"cabinet_depth_m", "Cabinet depth", "Outside, along its axis."},
                 x.cabinet_depth_m);
    v.number({{"mass_kg", "Mass", "Of the cabinet with all that is in it."},
              Unit::kilogram,
              0.1,
              2000.0},
             x.mass_kg);
}

/// How it sends sound into different directions.
void describe_directivity(FieldVisitor& v, Loudspeaker& x) {
    choice(v, {"directivity", "Directivity", "Piston model, or a horn by nominal coverage."},
           kDirectivities, x.directivity);
    v.number({{"piston_radius_m", "Piston radius",
               "Of the radiating surface; half the mouth's width of a horn."},
              Unit::millimetre,
              0.005,
              0.6},
             x.piston_radius_m);
    coverage(v, {"coverage_across_deg", "Coverage across", "Between the -6 dB directions."},
             x.coverage_across_rad);
    coverage(v, {"coverage_up_deg", "Coverage up", "Between the -6 dB directions."},
             x.coverage_up_rad);
    list(v,
         {{"coverage_table", "Measured coverage",
           "By octave; one or more stand in place of the nominal coverage."},
          "coverage",
          20},
         x.coverage_table);
}

}  // namespace

void describe(FieldVisitor& v, CoveragePoint& x) {
    v.number(
        {{"frequency_hz", "Frequency", "Middle of the octave band."}, Unit::hertz, 20.0, 20000.0},
        x.frequency_hz);
    coverage(v, {"across_deg", "Across", "Between the -6 dB directions."}, x.across_rad);
    coverage(v, {"up_deg", "Up", "Between the -6 dB directions."}, x.up_rad);
}

void describe(FieldVisitor& v, Loudspeaker& x) {
    v.text({"name", "Name", "What the loudspeaker is called in this room."}, x.name);
    choice(v, {"channel", "Channel", "What it plays."}, kChannels, x.channel);
    v.number({{"across_m", "Across", "Acoustic centre."}, Unit::metre, -kFar, kFar}, x.across_m);
    v.number({{"up_m", "Up", "Acoustic centre."}, Unit::metre, -20.0, 60.0}, x.up_m);
    v.number({{"back_m", "Back", "Acoustic centre, from the screen wall."}, Unit::metre, 0.0, kFar},
             x.back_m);
    v.number({{"yaw_deg", "Yaw", "Axis turned to the right; 0 faces the booth."},
              Unit::radian,
              radians(-180.0),
              radians(180.0)},
             x.yaw_rad);
    v.number({{"pitch_deg", "Pitch down", "Axis turned downward from level."},
              Unit::radian,
              radians(-90.0),
              radians(90.0)},
             x.pitch_rad);
    v.flag({"behind_screen", "Behind the screen", "Its sound passes the perforated sheet."},
           x.behind_screen);
    v.number({{"sensitivity_db", "Sensitivity", "Level at 1 m for 1 W, on axis, free field."},
              Unit::decibel,
              60.0,
              130.0},
             x.sensitivity_db);
    v.number({{"power_w", "Rated power", "Continuous."}, Unit::watt, 1.0, 20000.0}, x.power_w);
    v.number({{"amplifier_w", "Amplifier power", "Continuous, that it can give this loudspeaker."},
              Unit::watt,
              1.0,
              20000.0},
             x.amplifier_w);
    v.number({{"delay_s", "Delay", "Of its signal, on top of what its channel has."},
              Unit::second,
              0.0,
              0.5},
             x.delay_s);
    describe_directivity(v, x);
    describe_cabinet(v, x);
}

}  // namespace rakeline::room
