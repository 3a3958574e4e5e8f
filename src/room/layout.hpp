// SPDX-License-Identifier: MIT
#pragma once

#include "base/units.hpp"
#include "room/acoustics.hpp"
#include "room/lamp.hpp"
#include "room/loudspeaker.hpp"

#include <optional>
#include <string>
#include <vector>

/// The document: one cinema room as plain values. Copying a Layout is the undo step; nothing edits
/// one in place behind anyone's back. SI inside (metres, radians, lumens); temperatures in °C.
///
/// Which key a member has in a file, its range and its words for the window stand once, in
/// fields.cpp. Positions: across (x, to the right as seen from the seats), up (y, from the floor
/// datum), back (z, from the screen wall toward the booth).
namespace rakeline::room {

struct FloorPoint {
    double back_m = 0.0;
    double up_m = 0.0;
    bool operator==(const FloorPoint&) const = default;
};

enum class FloorMode {
    by_seating,  ///< the floor is what the seating blocks stand on, level in front and behind
    by_profile,  ///< the floor follows Hall::floor_profile, and blocks on the floor stand on it
};

struct Hall {
    double width_m = 12.0;   ///< between the side walls at the screen wall
    double length_m = 20.0;  ///< screen wall to booth wall
    double height_m = 6.5;   ///< floor datum to ceiling
    double splay_rad = 0.0;  ///< each side wall opens by this angle toward the booth
    FloorMode floor = FloorMode::by_seating;
    std::vector<FloorPoint> floor_profile;  ///< from screen wall to booth, back_m rising
    double temperature_c = 20.0;
    double humidity_fraction = 0.5;
    bool operator==(const Hall&) const = default;
};

enum class MaskingMode {
    common_height,  ///< the sides move
    common_width,   ///< top or bottom moves
    four_way,       ///< all four move
    fixed,          ///< nothing moves: each format is the largest of its ratio in the frame
};

enum class MovingEdge { top, bottom, both };  ///< of common-width masking

enum class LobeKind {
    matte,   ///< gain the same in all directions
    mirror,  ///< a lobe about the mirror direction (angle-reflective)
    retro,   ///< a lobe about the incoming direction (retro-reflective)
};

/// A measured gain, at an angle from the lobe's middle.
struct GainPoint {
    double angle_rad = 0.0;
    double gain = 1.0;
    bool operator==(const GainPoint&) const = default;
};

struct ScreenSurface {
    std::string name = "matte white";
    LobeKind lobe = LobeKind::matte;
    double peak_gain = 1.0;
    double matte_gain = 1.0;  ///< the part that the lobe stands on
    double half_gain_angle_rad =
        base::radians(40.0);  ///< where gain is half of peak; unused if matte
    /// Measured, angles rising from 0: two or more stand in place of peak, matte part and angle.
    std::vector<GainPoint> gain_table;
    double retro_gain = 0.0;          ///< height of a second lobe, back along the incoming light
    bool keeps_polarisation = false;  ///< metallised, for stereo by polarised light
    bool gain_includes_perforation = false;  ///< measured after perforation
    bool operator==(const ScreenSurface&) const = default;
};

enum class PerforationPattern {
    none,
    square,
    staggered,  ///< by 60 degrees
    woven,      ///< plain weave: square openings between threads
};

struct Perforation {
    PerforationPattern pattern = PerforationPattern::none;
    double hole_diameter_m = 0.0012;  ///< woven: side of an opening
    double pitch_m = 0.005;           ///< between centres of neighbouring holes or threads
    double angle_rad = 0.0;  ///< rows of the lattice turned against the picture's horizontal,
                             ///< clockwise as seen from the seats
    bool operator==(const Perforation&) const = default;
};

/// A measured transmission loss of the sheet, at normal incidence.
struct LossPoint {
    double frequency_hz = 1000.0;
    double loss_db = 0.0;
    bool operator==(const LossPoint&) const = default;
};

/// The frame is the largest opening; the masking makes each format's opening within it.
struct Screen {
    double width_m = 10.0;   ///< chord
    double height_m = 4.2;   ///< along the surface
    double sill_m = 1.2;     ///< lower edge of the frame above floor datum, before tilt
    double setback_m = 1.2;  ///< screen wall to surface on the centre line, at the frame's centre
    double radius_m = 0.0;   ///< 0: flat
    double tilt_rad = 0.0;   ///< leans back by this, about the frame's horizontal centre line
    MaskingMode masking = MaskingMode::common_height;
    MovingEdge moving_edge = MovingEdge::top;
    ScreenSurface surface;
    Perforation perforation;
    double sheet_thickness_m = 0.0003;
    double sheet_mass_kg_m2 = 0.35;  ///< of the sheet as hung, holes included
    /// Measured, frequencies rising: two or more stand in place of the loss from holes and mass.
    std::vector<LossPoint> loss_table;
    bool operator==(const Screen&) const = default;
};

struct Format {
    std::string name = "2.39";   ///< how the trade calls it: "1.85", "2.39"
    double aspect_ratio = 2.39;  ///< opening chord width over height
    std::optional<double>
        opening_width_m;  ///< four-way masking: the width wanted, else the largest
    bool operator==(const Format&) const = default;
};

enum class LensKind { prime, zoom };

struct Lens {
    std::string name;
    LensKind kind = LensKind::prime;
    double focal_length_m = 0.05;       ///< of a prime, or the short end of a zoom
    double focal_length_long_m = 0.05;  ///< long end of a zoom; a prime's own again
    double f_number = 1.9;
    double image_circle_m = 0.032;  ///< diameter that it covers in the gate
    double shift_up_max = 0.0;      ///< in gate heights, each way
    double shift_across_max = 0.0;  ///< in gate widths, each way
    bool operator==(const Lens&) const = default;
};

enum class SourceKind { film, digital };

/// How one projector makes one format.
struct FormatUse {
    std::string format = "2.39";
    double gate_width_m = 0.020955;  ///< film: aperture; digital: see pixels
    double gate_height_m = 0.017526;
    double squeeze = 1.0;    ///< anamorphic: picture across is stretched by this
    int pixels_wide = 2048;  ///< digital: part of the imager in use
    int pixels_high = 858;
    std::string lens;  ///< name in Layout::lenses; empty: the exact focal length
    std::optional<double> focal_length_m;  ///< set zoom position, else what the format wants
    double shift_up = 0.0;                 ///< picture moved up, in gate heights
    double shift_across = 0.0;             ///< picture moved right, in gate widths
    double light_fraction = 1.0;     ///< that lens and iris pass at this setting, over their most
    double plate_allowance_m = 0.0;  ///< film: left standing all round for filing by hand
    double plate_corner_radius_m = 0.0;  ///< film: of the opening's corners, on the screen
    bool operator==(const FormatUse&) const = default;
};

struct Imager {
    int pixels_wide = 2048;
    int pixels_high = 1080;
    double pixel_pitch_m = 13.68e-6;
    bool operator==(const Imager&) const = default;
};

enum class AimMode {
    picture_centre,  ///< axis through the centre of each format's opening
    angles,          ///< axis by yaw and pitch
};

struct Aim {
    AimMode mode = AimMode::picture_centre;
    double yaw_rad = 0.0;  ///< axis turned to the right (toward +x) seen along the beam from above
    double pitch_rad = 0.0;  ///< axis turned downward
    double roll_rad = 0.0;   ///< picture turned clockwise as seen from the seats
    bool operator==(const Aim&) const = default;
};

/// The window in the booth wall. The wall stands at Hall::length_m.
struct Port {
    double across_m = 0.0;  ///< centre
    double up_m = 4.0;      ///< centre
    double width_m = 0.5;
    double height_m = 0.4;
    int panes = 1;
    double glass_index = 1.52;
    double glass_thickness_m = 0.006;
    double glass_absorption_per_m = 2.0;       ///< internal transmittance is exp(-this * path)
    std::optional<double> coated_reflectance;  ///< per surface; unset: bare glass by Fresnel
    bool operator==(const Port&) const = default;
};

struct Projector {
    std::string name = "Projector";
    SourceKind kind = SourceKind::digital;
    double across_m = 0.0;  ///< principal point of the lens
    double up_m = 4.0;
    double back_m = 20.5;  ///< behind Hall::length_m: in the booth
    Aim aim;
    Port port;
    double lit_width_m = 0.0213;  ///< film: the gate area that the lamp lights
    double lit_height_m = 0.0178;
    double film_resolution_lp_mm = 50.0;  ///< film: line pairs a millimetre that it is held to
    Imager imager;                        ///< digital
    double contrast = 2000.0;             ///< white over black of the machine and lens alone
    FluxChain flux;
    Supply supply;
    std::vector<FormatUse> formats;
    bool operator==(const Projector&) const = default;
};

enum class BlockFloor {
    level,
    slope,            ///< plane floor, `slope_rad`
    stepped,          ///< one step of `riser_m` a row
    equal_clearance,  ///< risers from the recursion for `wanted_c_m`
    flights,          ///< risers alike over some rows, then others: `SeatBlock::flights`
};

/// Steps of one riser, one a row. A floor of flights takes them from the first row back; rows
/// behind the last flight go on with its riser, and steps past the last row are not built.
struct Flight {
    int rows = 1;  ///< that this riser leads up to
    double riser_m = 0.15;
    bool operator==(const Flight&) const = default;
};

struct Aisle {
    int after_seat = 8;  ///< seats to the house left of it in the first row
    double width_m = 1.2;
    bool operator==(const Aisle&) const = default;
};

struct CrossAisle {
    int after_row = 5;     ///< rows of the block in front of it
    double width_m = 1.2;  ///< added to the row spacing
    bool operator==(const CrossAisle&) const = default;
};

struct WheelchairPlace {
    std::string row = "A";
    int seat = 1;
    bool operator==(const WheelchairPlace&) const = default;
};

/// Rows of seats that belong together. The seat's reference point is the floor under the eye.
struct SeatBlock {
    std::string name = "stalls";
    int rows = 8;
    int seats_per_row = 12;         ///< in the first row
    int seats_added_per_row = 0;    ///< each row has this many more than the one in front
    std::string first_row = "A";    ///< letter; the next rows follow: B, C, ... Z, AA, AB
    int first_seat_number = 1;      ///< numbers count from house left (x least) to the right
    double across_m = 0.0;          ///< the block's centre line
    double first_row_back_m = 5.0;  ///< reference point of the first row on the centre line
    double first_row_up_m = 0.0;    ///< floor there (ignored when the floor is by profile)
    double row_spacing_m = 1.1;
    double seat_pitch_m = 0.56;
    double row_radius_m =
        0.0;  ///< of the first row's arc about a point toward the screen; 0: straight
    bool staggered = false;  ///< every second row half a seat to the right
    BlockFloor floor = BlockFloor::stepped;
    double slope_rad = 0.0;
    double riser_m = 0.15;
    double wanted_c_m = 0.12;  ///< equal clearance over each row in front
    std::vector<Flight> flights;
    double front_wall_m = 0.0;  ///< solid front (balcony) above the first row's floor; 0: none
    double seat_back_m = 1.0;   ///< top of a seat's back above its floor
    bool raised = false;        ///< a balcony: open below, hall floor runs on under it
    std::vector<Aisle> aisles;
    std::vector<CrossAisle> cross_aisles;
    std::vector<WheelchairPlace> wheelchair_places;
    bool operator==(const SeatBlock&) const = default;
};

/// Who may come: what random audiences are drawn from (sight/crowd.hpp).
struct Crowd {
    double women_fraction = 0.5;
    double taken_fraction = 1.0;  ///< share of the seats that are taken
    double seat_height_m = 0.46;  ///< the cushion, sat on, above the floor
    double slump_m = 0.03;        ///< by which people sit lower than bolt upright
    int seed = 1;                 ///< the same seed draws the same crowds
    double precision = 0.02;      ///< wanted half width of a chance's confidence interval
    bool operator==(const Crowd&) const = default;
};

/// Who sits in the seats, where no crowd is drawn.
struct Audience {
    double eye_height_m = 1.20;  ///< seated, above the floor at the seat
    double wheelchair_eye_height_m = 1.15;
    double wheelchair_eye_low_m = 1.09;    ///< the range that a place has to serve
    double wheelchair_eye_high_m = 1.295;  ///< (ADA fig. A3: 43 to 51 in)
    double eye_to_crown_m = 0.114;
    double head_breadth_m = 0.155;
    double standing_height_m = 1.75;  ///< crown of a standing person, for the beam
    std::string reference_seat;       ///< empty: centre of the row nearest the middle
    Crowd crowd;
    bool operator==(const Audience&) const = default;
};

/// A light that stays on during the show: exit sign, aisle light.
struct HouseLight {
    std::string name;
    double across_m = 0.0;
    double up_m = 2.5;
    double back_m = 10.0;
    double flux_lm = 5.0;
    bool operator==(const HouseLight&) const = default;
};

/// What sends light to the screen that is no picture. Reflectances 0 to 1, diffuse.
struct StrayLight {
    std::vector<HouseLight> lights;
    double wall_reflectance = 0.08;
    double ceiling_reflectance = 0.05;
    double floor_reflectance = 0.08;
    double audience_reflectance = 0.12;  ///< of the floor that seats cover
    bool operator==(const StrayLight&) const = default;
};

/// How much is shown, for what it costs.
struct Programme {
    double show_s = 2.2 * 3600.0;  ///< lamp burning, a show
    int shows_per_year = 1000;
    double energy_price = 0.25;  ///< of a kilowatt hour
    std::string currency;        ///< what prices are counted in
    bool operator==(const Programme&) const = default;
};

struct Layout {
    std::string name = "Untitled room";
    std::string note;  ///< demo rooms say here that they are invented
    std::string limits_file = "practice/theatre.json";  ///< as seen from the layout's own folder
    Hall hall;
    Screen screen;
    std::vector<Format> formats;
    std::vector<Projector> projectors;
    std::vector<Lens> lenses;
    std::vector<SeatBlock> seating;
    Audience audience;
    std::vector<Loudspeaker> loudspeakers;
    StrayLight stray_light;
    Programme programme;
    double peak_level_db = 105.0;  ///< of a screen channel at the reference seat
    Acoustics acoustics;
    Playback playback;
    bool operator==(const Layout&) const = default;
};

}  // namespace rakeline::room
