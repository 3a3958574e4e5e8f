// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"
#include "room/layout_file.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::radians;
using base::Unit;

constexpr auto kMaskingModes =
    std::to_array<const char*>({"common_height", "common_width", "four_way", "fixed"});
constexpr auto kMovingEdges = std::to_array<const char*>({"top", "bottom", "both"});
constexpr auto kLobes = std::to_array<const char*>({"matte", "mirror", "retro"});
constexpr auto kPatterns = std::to_array<const char*>({"none", "square", "staggered", "woven"});

/// The sheet between the holes.
void describe_sheet(FieldVisitor& v, double& thickness_m, double& mass_kg_m2) {
    v.number({{"sheet_thickness_m", "Sheet thickness", "Of the sheet."},
              Unit::millimetre,
              0.00005,
              0.01},
             thickness_m);
    v.number(
        {{"sheet_mass_kg_m2", "Sheet mass", "Mass per area as hung."}, Unit::kg_per_m2, 0.02, 20.0},
        mass_kg_m2);
}

}  // namespace

void describe(FieldVisitor& v, GainPoint& x) {
    v.number({{"angle_deg", "Angle", "From the lobe's middle."}, Unit::radian, 0.0, radians(90.0)},
             x.angle_rad);
    v.number(
        {{"gain", "Gain", "Luminance over that of a perfect matte white."}, Unit::ratio, 0.0, 20.0},
        x.gain);
}

void describe(FieldVisitor& v, ScreenSurface& x) {
    v.text({"name", "Surface", "What the sheet is called in its series."}, x.name);
    choice(v, {"lobe", "Lobe", "Where the sheet sends more light than a matte one."}, kLobes,
           x.lobe);
    v.number({{"peak_gain", "Peak gain", "Luminance over that of a perfect matte white, at best."},
              Unit::ratio,
              0.05,
              10.0},
             x.peak_gain);
    v.number(
        {{"matte_gain", "Matte part", "The part of the gain that is the same in all directions."},
         Unit::ratio,
         0.0,
         2.0},
        x.matte_gain);
    v.number({{"half_gain_angle_deg", "Half-gain angle", "Where the gain falls to half its peak."},
              Unit::radian,
              radians(1.0),
              radians(89.0)},
             x.half_gain_angle_rad);
    list(v,
         {{"gain_table", "Measured gains",
           "By angle from the lobe's middle; two or more stand in place of the three above."},
          "gain",
          100},
         x.gain_table);
    v.number({{"retro_gain", "Retro part", "Gain sent back toward the lens, over all the rest."},
              Unit::ratio,
              0.0,
              10.0},
             x.retro_gain);
    v.flag({"keeps_polarisation", "Keeps polarisation",
            "A metallised sheet, for stereo by polarised light."},
           x.keeps_polarisation);
    v.flag({"gain_includes_perforation", "Gain measured perforated",
            "Whether the gain was measured with the holes in, so that they are counted once."},
           x.gain_includes_perforation);
}

void describe(FieldVisitor& v, Perforation& x) {
    choice(v,
           {"pattern", "Pattern",
            "How the holes stand: none, square, staggered by 60 degrees, or between threads."},
           kPatterns, x.pattern);
    v.number({{"hole_diameter_m", "Hole diameter", "Of one hole; the side of a woven opening."},
              Unit::millimetre,
              0.0001,
              0.01},
             x.hole_diameter_m);
    v.number({{"pitch_m", "Pitch", "Between the centres of neighbouring holes or threads."},
              Unit::millimetre,
              0.0002,
              0.05},
             x.pitch_m);
    v.number(
        {{"angle_deg", "Lattice angle",
          "Rows of holes turned clockwise from the picture's horizontal, seen from the seats."},
         Unit::radian,
         radians(-90.0),
         radians(90.0)},
        x.angle_rad);
}

void describe(FieldVisitor& v, LossPoint& x) {
    v.number({{"frequency_hz", "Frequency", "At which the loss was measured."},
              Unit::hertz,
              20.0,
              20000.0},
             x.frequency_hz);
    v.number({{"loss_db", "Loss", "Of sound that meets the sheet straight on."},
              Unit::decibel,
              0.0,
              60.0},
             x.loss_db);
}

void describe(FieldVisitor& v, SheetChoice& x) {
    v.text({"name", "Name", "What the sheet is called in its series."}, x.name);
    group(v, {"perforation", "Perforation", "The holes that the sound passes."}, x.perforation);
    describe_sheet(v, x.thickness_m, x.mass_kg_m2);
}

void describe(FieldVisitor& v, Screen& x) {
    v.number({{"width_m", "Frame width", "Chord of the largest opening."}, Unit::metre, 0.5, 60.0},
             x.width_m);
    v.number({{"height_m", "Frame height", "Of the largest opening, along the surface."},
              Unit::metre,
              0.3,
              40.0},
             x.height_m);
    v.number({{"sill_m", "Sill", "Lower edge of the frame above the floor datum, before tilt."},
              Unit::metre,
              -10.0,
              40.0},
             x.sill_m);
    v.number({{"setback_m", "Setback", "From the screen wall to the surface on the centre line."},
              Unit::metre,
              0.0,
              50.0},
             x.setback_m);
    v.number({{"radius_m", "Radius", "Of the curved screen; 0 for a flat one."},
              Unit::metre,
              0.0,
              1000.0},
             x.radius_m);
    v.number({{"tilt_deg", "Tilt back", "Leans back about its horizontal centre line."},
              Unit::radian,
              radians(-20.0),
              radians(20.0)},
             x.tilt_rad);
    choice(v, {"masking", "Masking", "Which black edges move between formats."}, kMaskingModes,
           x.masking);
    choice(v, {"moving_edge", "Moving edge", "Common width: the edge that moves."}, kMovingEdges,
           x.moving_edge);
    group(v, {"surface", "Surface", "How the sheet sends light back."}, x.surface);
    group(v, {"perforation", "Perforation", "The holes that the sound passes."}, x.perforation);
    describe_sheet(v, x.sheet_thickness_m, x.sheet_mass_kg_m2);
    list(v,
         {{"loss_table", "Measured sound loss",
           "By frequency; two or more stand in place of the loss from holes and mass."},
          "loss",
          100},
         x.loss_table);
}

void describe(FieldVisitor& v, Format& x) {
    v.text({"name", "Name", "How the trade calls it, for example 2.39."}, x.name);
    v.number({{"aspect_ratio", "Aspect ratio", "Width of the opening over its height."},
              Unit::ratio,
              0.5,
              5.0},
             x.aspect_ratio);
    v.optional_number({{"opening_width_m", "Opening width",
                        "Four-way masking: the width wanted; left out, the largest."},
                       Unit::metre,
                       0.3,
                       60.0},
                      x.opening_width_m);
}

}  // namespace rakeline::room
