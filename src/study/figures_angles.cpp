// SPDX-License-Identifier: MIT
#include "study/sight_cells.hpp"

#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;
using sight::ViewingAngles;

constexpr const char* kAngle = "derived: true angle at the eye";

template <double ViewingAngles::*Member>
std::optional<double> angle(const Cell& c, Working& w) {
    record_eye(c, w);
    return angles_of(c).*Member;
}

std::optional<double> head_turn(const Cell& c, Working& w) {
    record_eye(c, w);
    const room::Seat& seat = c.study.seats.seats.at(static_cast<std::size_t>(c.index));
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    w.input("f_x", "facing, across", seat.facing.x, Unit::ratio);
    w.input("f_z", "facing, back", seat.facing.z, Unit::ratio);
    return sight::head_turn(c.study.picture.surface, opening, seat.eye, seat.facing);
}

std::optional<double> apparent_keystone(const Cell& c, Working& w) {
    record_eye(c, w);
    const ViewingAngles& angles = angles_of(c);
    w.input("h_left", "left edge at the eye", angles.edge_left, Unit::radian);
    w.input("h_right", "right edge at the eye", angles.edge_right, Unit::radian);
    return angles.apparent_keystone();
}

std::optional<double> distance_ratio(const Cell& c, Working& w, bool by_width) {
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    const double distance =
        w.input("d", "eye to picture centre", angles_of(c).distance_m, Unit::metre);
    return distance / (by_width ? w.input("W", "picture width, chord", opening.width_m, Unit::metre)
                                : w.input("H", "picture height", opening.height_m, Unit::metre));
}

std::optional<double> distance_widths(const Cell& c, Working& w) {
    return distance_ratio(c, w, true);
}
std::optional<double> distance_heights(const Cell& c, Working& w) {
    return distance_ratio(c, w, false);
}

}  // namespace

std::span<const FigureDefinition> angle_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.subtended_width", Subject::sight, "Picture width at the eye", Unit::radian,
         kFormatSeat, "True angle between the mid-points of the picture's left and right edge.",
         "angle(left - eye, right - eye)", kAngle,
         "The picture is {value} wide from seat {seat} in {format}",
         angle<&ViewingAngles::subtended_width>},
        {"sight.subtended_height", Subject::sight, "Picture height at the eye", Unit::radian,
         kFormatSeat, "True angle between the mid-points of the picture's bottom and top edge.",
         "angle(bottom - eye, top - eye)", kAngle,
         "The picture is {value} high from seat {seat} in {format}",
         angle<&ViewingAngles::subtended_height>},
        {"sight.elevation_top", Subject::sight, "Up to the picture's top", Unit::radian,
         kFormatSeat, "From horizontal up to the middle of the picture's top edge.",
         "atan((y_top - y) / d_level)", kAngle,
         "Seat {seat} looks up {value} to the top of {format}",
         angle<&ViewingAngles::elevation_top>},
        {"sight.elevation_centre", Subject::sight, "Up to the picture's centre", Unit::radian,
         kFormatSeat, "From horizontal up to the picture's centre.", "atan((y_c - y) / d_level)",
         kAngle, "Seat {seat} looks up {value} to the centre of {format}",
         angle<&ViewingAngles::elevation_centre>},
        {"sight.elevation_bottom", Subject::sight, "Up to the picture's bottom", Unit::radian,
         kFormatSeat,
         "From horizontal up to the middle of the picture's bottom edge; below zero it lies under "
         "the eye.",
         "atan((y_bottom - y) / d_level)", kAngle,
         "Seat {seat} looks up {value} to the bottom of {format}",
         angle<&ViewingAngles::elevation_bottom>},
        {"sight.head_turn", Subject::sight, "Head turned", Unit::radian, kFormatSeat,
         "From the way the seat faces to the picture's centre, to either side, in plan.",
         "angle in plan(facing, centre - eye)", kAngle,
         "Seat {seat} turns its head by {value} to {format}", head_turn},
        {"sight.off_axis", Subject::sight, "Off axis", Unit::radian, kFormatSeat,
         "Line from eye to picture centre against the surface's normal there, in plan.",
         "angle in plan(eye - centre, normal)", kAngle,
         "Seat {seat} sits {value} off the axis in {format}", angle<&ViewingAngles::off_axis>},
        {"sight.off_axis_far", Subject::sight, "Off axis, far edge", Unit::radian, kFormatSeat,
         "Line from eye to the farther side edge against the normal at the centre, in plan.",
         "angle in plan(eye - far edge, normal)", kAngle,
         "Seat {seat} sees the far edge at {value} in {format}",
         angle<&ViewingAngles::off_axis_far>},
        {"sight.apparent_keystone", Subject::sight, "Keystone seen", Unit::fraction, kFormatSeat,
         "How much higher the picture's right edge looks than its left one, by their angles at the "
         "eye; below zero the left one is higher.",
         "2 (h_right - h_left) / (h_right + h_left)", kAngle,
         "Seat {seat} sees the sides of {format} differ by {value}", apparent_keystone},
        {"sight.distance_widths", Subject::sight, "Distance in widths", Unit::ratio, kFormatSeat,
         "Eye to picture centre over the picture's width.", "d / W", "derived: ratio",
         "Seat {seat} sits {value} picture widths away in {format}", distance_widths},
        {"sight.distance_heights", Subject::sight, "Distance in heights", Unit::ratio, kFormatSeat,
         "Eye to picture centre over the picture's height.", "d / H", "derived: ratio",
         "Seat {seat} sits {value} picture heights away in {format}", distance_heights},
    };
    return entries;
}

}  // namespace rakeline::study
