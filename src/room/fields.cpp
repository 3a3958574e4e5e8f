// SPDX-License-Identifier: MIT
#include "room/fields.hpp"

#include "room/layout_file.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::radians;
using base::Unit;

constexpr auto kFloorModes = std::to_array<const char*>({"by_seating", "by_profile"});
constexpr auto kMaskingModes =
    std::to_array<const char*>({"common_height", "common_width", "four_way", "fixed"});
constexpr auto kMovingEdges = std::to_array<const char*>({"top", "bottom", "both"});
constexpr auto kLobes = std::to_array<const char*>({"matte", "mirror", "retro"});
constexpr auto kPatterns = std::to_array<const char*>({"none", "square", "staggered"});
constexpr auto kLensKinds = std::to_array<const char*>({"prime", "zoom"});
constexpr auto kSourceKinds = std::to_array<const char*>({"film", "digital"});
constexpr auto kAimModes = std::to_array<const char*>({"picture_centre", "angles"});
constexpr auto kLamps = std::to_array<const char*>({"xenon", "laser"});
constexpr auto kFluxEntries = std::to_array<const char*>({"measured", "chain"});
constexpr auto kBlockFloors =
    std::to_array<const char*>({"level", "slope", "stepped", "equal_clearance"});
constexpr auto kChannels =
    std::to_array<const char*>({"left", "centre", "right", "sub_bass", "surround"});
constexpr auto kDirectivities = std::to_array<const char*>({"piston", "horn"});

/// Positions in a room: no hall of this trade is larger.
constexpr double kFar = 200.0;

template <class Enum, std::size_t N>
void choice(FieldVisitor& v, const Words& words, const std::array<const char*, N>& names, Enum& x) {
    int index = static_cast<int>(x);
    v.choice({words, names}, index);
    x = static_cast<Enum>(index);
}

std::string name_of(const FloorPoint&) {
    return {};
}
std::string name_of(const FormatUse& x) {
    return x.format;
}
std::string name_of(const Aisle&) {
    return {};
}
std::string name_of(const CrossAisle&) {
    return {};
}
std::string name_of(const WheelchairPlace& x) {
    return x.row + std::to_string(x.seat);
}
template <class T>
std::string name_of(const T& x) {
    return x.name;
}

void describe(FieldVisitor& v, FloorPoint& x) {
    v.number({{"back_m", "Back", "Distance from the screen wall."}, Unit::metre, 0.0, kFar},
             x.back_m);
    v.number({{"up_m", "Up", "Floor height above the datum."}, Unit::metre, -20.0, 60.0}, x.up_m);
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
    v.flag({"gain_includes_perforation", "Gain measured perforated",
            "Whether the gain was measured with the holes in, so that they are counted once."},
           x.gain_includes_perforation);
}

void describe(FieldVisitor& v, Perforation& x) {
    choice(v,
           {"pattern", "Pattern", "How the holes stand: none, square, or staggered by 60 degrees."},
           kPatterns, x.pattern);
    v.number({{"hole_diameter_m", "Hole diameter", "Of one hole."}, Unit::millimetre, 0.0001, 0.01},
             x.hole_diameter_m);
    v.number({{"pitch_m", "Pitch", "Between the centres of neighbouring holes."},
              Unit::millimetre,
              0.0002,
              0.05},
             x.pitch_m);
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
}

void describe(FieldVisitor& v, Imager& x) {
    v.integer({{"pixels_wide", "Pixels wide", "Of the whole imager."}, 16, 32768}, x.pixels_wide);
    v.integer({{"pixels_high", "Pixels high", "Of the whole imager."}, 16, 32768}, x.pixels_high);
    v.number({{"pixel_pitch_m", "Pixel pitch", "Between neighbouring pixels on the imager."},
              Unit::millimetre,
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
}

void describe(FieldVisitor& v, Aisle& x) {
    v.integer(
        {{"after_seat", "After seat", "Seats to the house left of it in the first row."}, 1, 2000},
        x.after_seat);
    v.number({{"width_m", "Width", "Clear width."}, Unit::metre, 0.3, 10.0}, x.width_m);
}

void describe(FieldVisitor& v, CrossAisle& x) {
    v.integer({{"after_row", "After row", "Rows of the block in front of it."}, 1, 200},
              x.after_row);
    v.number({{"width_m", "Width", "Added to the row spacing there."}, Unit::metre, 0.3, 10.0},
             x.width_m);
}

void describe(FieldVisitor& v, WheelchairPlace& x) {
    v.text({"row", "Row", "Letter of the row."}, x.row);
    v.integer({{"seat", "Seat", "Seat number in the row."}, 1, 5000}, x.seat);
}

template <class T>
class VectorAccess final : public ListAccess {
public:
    explicit VectorAccess(std::vector<T>& items) : items_(items) {}
    std::size_t size() const override { return items_.size(); }
    void resize(std::size_t count) override { items_.resize(count); }
    void erase(std::size_t index) override {
        items_.erase(items_.begin() + static_cast<std::ptrdiff_t>(index));
    }
    void visit(std::size_t index, FieldVisitor& visitor) override {
        describe(visitor, items_.at(index));
    }
    std::string title(std::size_t index) const override { return name_of(items_.at(index)); }

private:
    std::vector<T>& items_;
};

template <class T>
void list(FieldVisitor& v, const ListField& field, std::vector<T>& items) {
    VectorAccess<T> access(items);
    v.list(field, access);
}

template <class T>
void group(FieldVisitor& v, const Words& words, T& x) {
    v.group(words, [&](FieldVisitor& inner) { describe(inner, x); });
}

}  // namespace

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
    v.number({{"sheet_thickness_m", "Sheet thickness", "Of the sheet."},
              Unit::millimetre,
              0.00005,
              0.01},
             x.sheet_thickness_m);
    v.number(
        {{"sheet_mass_kg_m2", "Sheet mass", "Mass per area as hung."}, Unit::kg_per_m2, 0.02, 20.0},
        x.sheet_mass_kg_m2);
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
    group(v, {"imager", "Imager", "Digital: the whole imager."}, x.imager);
    group(v, {"flux", "Light", "From the lamp to the lens."}, x.flux);
    list(v, {{"formats", "Formats", "How this machine makes each format."}, "format", 40},
         x.formats);
}

void describe(FieldVisitor& v, SeatBlock& x) {
    v.text({"name", "Name", "For example stalls or balcony."}, x.name);
    v.integer({{"rows", "Rows", "Number of rows."}, 1, 200}, x.rows);
    v.integer({{"seats_per_row", "Seats a row", "In the first row."}, 1, 500}, x.seats_per_row);
    v.integer(
        {{"seats_added_per_row", "Seats added a row", "More than in the row in front."}, -20, 20},
        x.seats_added_per_row);
    v.text({"first_row", "First row", "Its letter; the next rows follow."}, x.first_row);
    v.integer({{"first_seat_number", "First number", "Of the seat at house left."}, 1, 5000},
              x.first_seat_number);
    v.number({{"across_m", "Across", "The block's centre line."}, Unit::metre, -50.0, 50.0},
             x.across_m);
    v.number({{"first_row_back_m", "First row back", "Eyes of the first row, on the centre line."},
              Unit::metre,
              0.0,
              150.0},
             x.first_row_back_m);
    v.number({{"first_row_up_m", "First row up", "Floor of the first row above the datum."},
              Unit::metre,
              -20.0,
              50.0},
             x.first_row_up_m);
    v.number({{"row_spacing_m", "Row spacing", "Back to back."}, Unit::metre, 0.5, 5.0},
             x.row_spacing_m);
    v.number({{"seat_pitch_m", "Seat pitch", "Between neighbouring seats."}, Unit::metre, 0.4, 3.0},
             x.seat_pitch_m);
    v.number({{"row_radius_m", "Row radius", "Of the first row's arc; 0 for straight rows."},
              Unit::metre,
              0.0,
              500.0},
             x.row_radius_m);
    v.flag({"staggered", "Staggered", "Every second row half a seat to the side."}, x.staggered);
    choice(v, {"floor", "Floor", "What the rows stand on."}, kBlockFloors, x.floor);
    v.number(
        {{"slope_deg", "Slope", "Of a sloped floor."}, Unit::radian, radians(-10.0), radians(45.0)},
        x.slope_rad);
    v.number(
        {{"riser_m", "Riser", "Step of a stepped floor, each row."}, Unit::millimetre, -0.5, 1.5},
        x.riser_m);
    v.number({{"wanted_c_m", "Wanted C", "Equal clearance over the row in front."},
              Unit::millimetre,
              0.0,
              0.5},
             x.wanted_c_m);
    v.number(
        {{"front_wall_m", "Front wall", "Solid front above the first row's floor; 0 for none."},
         Unit::metre,
         0.0,
         3.0},
        x.front_wall_m);
    v.flag({"raised", "Raised", "A balcony: the hall's floor runs on under it."}, x.raised);
    list(v, {{"aisles", "Aisles", "Gaps along the rows."}, "aisle", 20}, x.aisles);
    list(v, {{"cross_aisles", "Cross aisles", "Gaps between rows."}, "cross aisle", 20},
         x.cross_aisles);
    list(v,
         {{"wheelchair_places", "Wheelchair places", "Seats kept free for wheelchairs."},
          "place",
          200},
         x.wheelchair_places);
}

void describe(FieldVisitor& v, Audience& x) {
    v.number({{"eye_height_m", "Eye height", "Seated, above the floor at the seat."},
              Unit::metre,
              0.8,
              1.6},
             x.eye_height_m);
    v.number({{"wheelchair_eye_height_m", "Wheelchair eye height", "Above the floor at the place."},
              Unit::metre,
              0.8,
              1.6},
             x.wheelchair_eye_height_m);
    v.number({{"eye_to_crown_m", "Eye to crown", "Height of the head above the eye."},
              Unit::millimetre,
              0.05,
              0.4},
             x.eye_to_crown_m);
    v.number({{"head_breadth_m", "Head breadth", "Width of the head."}, Unit::millimetre, 0.1, 0.4},
             x.head_breadth_m);
    v.number({{"standing_height_m", "Standing height", "Crown of a standing person, for the beam."},
              Unit::metre,
              1.2,
              2.4},
             x.standing_height_m);
    v.text({"reference_seat", "Reference seat", "Where readings are taken; empty for the middle."},
           x.reference_seat);
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
    choice(v, {"directivity", "Directivity", "Piston model, or a horn by nominal coverage."},
           kDirectivities, x.directivity);
    v.number({{"piston_radius_m", "Piston radius", "Of the radiating surface."},
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
    v.number({{"peak_level_db", "Peak level", "Of a screen channel at the reference seat."},
              Unit::decibel,
              60.0,
              130.0},
             x.peak_level_db);
}

}  // namespace rakeline::room
