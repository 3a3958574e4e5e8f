// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

namespace rakeline::room {
namespace {

using base::Unit;

}  // namespace

void describe(FieldVisitor& v, Layout& x) {
    v.text({"name", "Room", "Name of the room."}, x.name);
    v.text({"note", "Note", "Anything worth saying of it."}, x.note);
    v.text({"limits_file", "Limits", "File of limits that the room is held against."},
           x.limits_file);
    group(v, {"hall", "Hall", "The auditorium."}, x.hall);
    group(v, {"screen", "Screen", "Frame, surface and masking."}, x.screen);
    list(v, {{"formats", "Formats", "Picture shapes that the room shows."}, "format", 40},
         x.formats);
    list(v, {{"projectors", "Projectors", "Machines in the booth."}, "projector", 20},
         x.projectors);
    list(v, {{"lenses", "Lenses", "Lenses that the booth owns or may buy."}, "lens", 200},
         x.lenses);
    list(v, {{"seating", "Seating", "Blocks of rows."}, "block", 40}, x.seating);
    group(v, {"audience", "Audience", "Who sits in the seats."}, x.audience);
    list(v,
         {{"loudspeakers", "Loudspeakers", "Screen channels, sub-bass and surrounds."},
          "loudspeaker",
          200},
         x.loudspeakers);
    group(v, {"stray_light", "Stray light", "Light on the screen that is no picture."},
          x.stray_light);
    group(v, {"programme", "Programme", "How much is shown, for what it costs."}, x.programme);
    v.number({{"peak_level_db", "Peak level", "Of a screen channel at the reference seat."},
              Unit::decibel,
              60.0,
              130.0},
             x.peak_level_db);
    group(v, {"acoustics", "Acoustics", "What the room's surfaces do to sound."}, x.acoustics);
    group(v, {"playback", "Playback", "How loud the channels play, and how they are set."},
          x.playback);
}

}  // namespace rakeline::room
