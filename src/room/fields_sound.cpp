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

}  // namespace

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
    choice(v, {"directivity", "Directivity", "Piston model, or a horn by nominal coverage."},
           kDirectivities, x.directivity);
    v.number({{"piston_radius_m", "Piston radius",
               "Of the radiating surface; half the mouth's width of a horn."},
              Unit::millimetre,
              0.005,
              0.6},
             x.piston_radius_m);
    v.number({{"coverage_across_deg", "Coverage across", "Between the -6 dB directions."},
              Unit::radian,
              radians(10.0),
              radians(180.0)},
             x.coverage_across_rad);
    v.number({{"coverage_up_deg", "Coverage up", "Between the -6 dB directions."},
              Unit::radian,
              radians(10.0),
              radians(180.0)},
             x.coverage_up_rad);
}

}  // namespace rakeline::room
