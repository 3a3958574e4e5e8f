// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::radians;
using base::Unit;

constexpr auto kFloorModes = std::to_array<const char*>({"by_seating", "by_profile"});

}  // namespace

void describe(FieldVisitor& v, FloorPoint& x) {
    v.number({{"back_m", "Back", "Distance from the screen wall."}, Unit::metre, 0.0, kFar},
             x.back_m);
    v.number({{"up_m", "Up", "Floor height above the datum."}, Unit::metre, -20.0, 60.0}, x.up_m);
}

void describe(FieldVisitor& v, Hall& x) {
    v.number({{"width_m", "Width", "Between the side walls at the screen wall."},
              Unit::metre,
              2.0,
              100.0},
             x.width_m);
    v.number({{"length_m", "Length", "From the screen wall to the booth wall."},
              Unit::metre,
              3.0,
              150.0},
             x.length_m);
    v.number(
        {{"height_m", "Height", "From the floor datum to the ceiling."}, Unit::metre, 2.0, 60.0},
        x.height_m);
    v.number({{"splay_deg", "Wall splay", "Each side wall opens by this toward the booth."},
              Unit::radian,
              radians(-30.0),
              radians(30.0)},
             x.splay_rad);
    choice(v, {"floor", "Floor", "By the seating blocks, or by a profile of its own."}, kFloorModes,
           x.floor);
    list(v,
         {{"floor_profile", "Floor profile", "Points from the screen wall to the booth."},
          "point",
          500},
         x.floor_profile);
    v.number({{"temperature_c", "Air temperature", "For the sound that the air takes."},
              Unit::celsius,
              -20.0,
              50.0},
             x.temperature_c);
    v.number({{"humidity_fraction", "Relative humidity", "For the sound that the air takes."},
              Unit::fraction,
              0.01,
              1.0},
             x.humidity_fraction);
}

}  // namespace rakeline::room
