// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::radians;
using base::Unit;

constexpr auto kLensKinds = std::to_array<const char*>({"prime", "zoom"});
constexpr auto kSourceKinds = std::to_array<const char*>({"film", "digital"});
constexpr auto kAimModes = std::to_array<const char*>({"picture_centre", "angles"});

}  // namespace

void describe(FieldVisitor& v, Lens& x) {
    v.text({"name", "Name", "What the lens is called in its series."}, x.name);
    choice(v, {"kind", "Kind", "A prime has one focal length, a zoom a range."}, kLensKinds,
           x.kind);
    v.number({{"focal_length_m", "Focal length", "Of a prime, or the short end of a zoom."},
              Unit::millimetre,
              0.005,
              1.0},
             x.focal_length_m);
    v.number({{"focal_length_long_m", "Long end", "Of a zoom; a prime repeats its focal length."},
              Unit::millimetre,
              0.005,
              1.0},
             x.focal_length_long_m);
    v.number({{"f_number", "f-number", "Focal length over the diameter of the pupil."},
              Unit::ratio,
              0.7,
              22.0},
             x.f_number);
    v.number({{"image_circle_m", "Image circle", "Diameter that it covers in the gate."},
              Unit::millimetre,
              0.005,
              0.2},
             x.image_circle_m);
    v.number(
        {{"shift_up_max", "Shift up, most", "In gate heights, each way."}, Unit::ratio, 0.0, 2.0},
        x.shift_up_max);
    v.number({{"shift_across_max", "Shift across, most", "In gate widths, each way."},
              Unit::ratio,
              0.0,
              2.0},
             x.shift_across_max);
}

void describe(FieldVisitor& v, FormatUse& x) {
    v.text({"format", "Format", "Name of one of the room's formats."}, x.format);
    v.number({{"gate_width_m", "Gate width", "Film: width of the projected aperture."},
              Unit::millimetre,
              0.002,
              0.1},
             x.gate_width_m);
    v.number({{"gate_height_m", "Gate height", "Film: height of the projected aperture."},
              Unit::millimetre,
              0.002,
              0.1},
             x.gate_height_m);
    v.number({{"squeeze", "Squeeze", "Anamorphic factor; 1 for a plain lens, 2 for film scope."},
              Unit::ratio,
              0.5,
              3.0},
             x.squeeze);
    v.integer({{"pixels_wide", "Pixels wide", "Digital: part of the imager in use."}, 16, 32768},
              x.pixels_wide);
    v.integer({{"pixels_high", "Pixels high", "Digital: part of the imager in use."}, 16, 32768},
              x.pixels_high);
    v.text({"lens", "Lens", "One of the room's lenses; empty for the exact focal length wanted."},
           x.lens);
    v.optional_number({{"focal_length_m", "Zoom set to", "Focal length that the zoom stands at."},
                       Unit::millimetre,
                       0.005,
                       1.0},
                      x.focal_length_m);
    v.number({{"shift_up", "Shift up", "Lens shift of the picture upward, in gate heights."},
              Unit::ratio,
              -2.0,
              2.0},
             x.shift_up);
    v.number({{"shift_across", "Shift across", "Lens shift to the right, in gate widths."},
              Unit::ratio,
              -2.0,
              2.0},
             x.shift_across);
    v.number({{"light_fraction", "Light passed",
               "By lens and iris at this setting, over the most that they pass."},
              Unit::fraction,
              0.01,
              1.0},
             x.light_fraction);
    v.number({{"plate_allowance_m", "Plate allowance",
               "Film: left standing all round in the gate, for the last fit by hand."},
              Unit::millimetre,
              0.0,
              0.002},
             x.plate_allowance_m);
    v.number({{"plate_corner_radius_m", "Corner radius",
               "Film: of the corners that the plate gives the picture on the screen."},
              Unit::millimetre,
              0.0,
              1.0},
             x.plate_corner_radius_m);
}

void describe(FieldVisitor& v, Imager& x) {
    v.integer({{"pixels_wide", "Pixels wide", "Of the whole imager."}, 16, 32768}, x.pixels_wide);
    v.integer({{"pixels_high", "Pixels high", "Of the whole imager."}, 16, 32768}, x.pixels_high);
    v.number({{"pixel_pitch_m", "Pixel pitch", "Between neighbouring pixels on the imager."},
              Unit::micrometre,
              1e-6,
              1e-4},
             x.pixel_pitch_m);
}

void describe(FieldVisitor& v, Aim& x) {
    choice(v, {"mode", "Aim", "At the centre of each format's opening, or by angles."}, kAimModes,
           x.mode);
    v.number({{"yaw_deg", "Yaw", "Axis turned to the right of straight ahead."},
              Unit::radian,
              radians(-60.0),
              radians(60.0)},
             x.yaw_rad);
    v.number({{"pitch_deg", "Pitch down", "Axis turned downward from level."},
              Unit::radian,
              radians(-60.0),
              radians(60.0)},
             x.pitch_rad);
    v.number({{"roll_deg", "Roll", "Picture turned clockwise as seen from the seats."},
              Unit::radian,
              radians(-45.0),
              radians(45.0)},
             x.roll_rad);
}

void describe(FieldVisitor& v, Projector& x) {
    v.text({"name", "Name", "What the booth calls this machine."}, x.name);
    choice(v, {"kind", "Kind", "Film or digital."}, kSourceKinds, x.kind);
    v.number({{"across_m", "Across", "Principal point of the lens."}, Unit::metre, -kFar, kFar},
             x.across_m);
    v.number({{"up_m", "Up", "Principal point of the lens."}, Unit::metre, -20.0, 60.0}, x.up_m);
    v.number({{"back_m", "Back", "Principal point of the lens, from the screen wall."},
              Unit::metre,
              0.5,
              kFar},
             x.back_m);
    group(v, {"aim", "Aim", "Where the lens axis points."}, x.aim);
    group(v, {"port", "Port", "The window in the booth wall."}, x.port);
    v.number({{"lit_width_m", "Lit width", "Film: width of the gate area that the lamp lights."},
              Unit::millimetre,
              0.002,
              0.1},
             x.lit_width_m);
    v.number({{"lit_height_m", "Lit height", "Film: height of the gate area that the lamp lights."},
              Unit::millimetre,
              0.002,
              0.1},
             x.lit_height_m);
    v.number({{"film_resolution_lp_mm", "Film resolution",
               "Film: line pairs a millimetre that the film is held to."},
              Unit::ratio,
              5.0,
              500.0},
             x.film_resolution_lp_mm);
    group(v, {"imager", "Imager", "Digital: the whole imager."}, x.imager);
    v.number({{"contrast", "Contrast", "White over black of machine and lens, in a dark room."},
              Unit::ratio,
              1.0,
              10000000.0},
             x.contrast);
    group(v, {"flux", "Light", "From the lamp to the lens."}, x.flux);
    group(v, {"supply", "Lamp supply", "What feeds, cools and pays for the lamp."}, x.supply);
    list(v, {{"formats", "Formats", "How this machine makes each format."}, "format", 40},
         x.formats);
}

}  // namespace rakeline::room
