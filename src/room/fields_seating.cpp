// SPDX-License-Identifier: MIT
#include "room/fields_internal.hpp"

#include <array>

namespace rakeline::room {
namespace {

using base::radians;
using base::Unit;

constexpr auto kBlockFloors =
    std::to_array<const char*>({"level", "slope", "stepped", "equal_clearance", "flights"});

}  // namespace

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

void describe(FieldVisitor& v, Flight& x) {
    v.integer({{"rows", "Rows", "Rows that this riser leads up to, one after the other."}, 1, 200},
              x.rows);
    v.number({{"riser_m", "Riser", "Step of each of them over the row in front."},
              Unit::millimetre,
              -0.5,
              1.5},
             x.riser_m);
}

void describe(FieldVisitor& v, WheelchairPlace& x) {
    v.text({"row", "Row", "Letter of the row."}, x.row);
    v.integer({{"seat", "Seat", "Seat number in the row."}, 1, 5000}, x.seat);
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
    list(v,
         {{"flights", "Flights", "Risers of a floor of flights, from the first row."},
          "flight",
          200},
         x.flights);
    v.number(
        {{"front_wall_m", "Front wall", "Solid front above the first row's floor; 0 for none."},
         Unit::metre,
         0.0,
         3.0},
        x.front_wall_m);
    v.number({{"seat_back_m", "Seat back", "Top of a seat's back above its floor."},
              Unit::metre,
              0.0,
              1.6},
             x.seat_back_m);
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

void describe(FieldVisitor& v, Crowd& x) {
    v.number({{"women_fraction", "Women", "Share of the crowd."}, Unit::fraction, 0.0, 1.0},
             x.women_fraction);
    v.number({{"taken_fraction", "Seats taken", "Share of the seats that are taken."},
              Unit::fraction,
              0.0,
              1.0},
             x.taken_fraction);
    v.number(
        {{"seat_height_m", "Cushion height", "Sat on, above the floor."}, Unit::metre, 0.2, 0.8},
        x.seat_height_m);
    v.number({{"slump_m", "Slump", "By which people sit lower than bolt upright."},
              Unit::millimetre,
              0.0,
              0.15},
             x.slump_m);
    v.integer({{"seed", "Seed", "The same seed draws the same crowds."}, 0, 1000000000}, x.seed);
    v.number({{"precision", "Precision", "Wanted half width of a chance's confidence interval."},
              Unit::fraction,
              0.001,
              0.2},
             x.precision);
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
    v.number({{"wheelchair_eye_low_m", "Wheelchair eye, lowest",
               "Lower end of the range that a place has to serve."},
              Unit::metre,
              0.8,
              1.6},
             x.wheelchair_eye_low_m);
    v.number({{"wheelchair_eye_high_m", "Wheelchair eye, highest",
               "Upper end of the range that a place has to serve."},
              Unit::metre,
              0.8,
              1.6},
             x.wheelchair_eye_high_m);
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
    group(v, {"crowd", "Crowd", "Who may come: what random audiences are drawn from."}, x.crowd);
}

}  // namespace rakeline::room
