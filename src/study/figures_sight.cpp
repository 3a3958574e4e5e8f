// SPDX-License-Identifier: MIT
#include "study/slices.hpp"
#include "study/study.hpp"

#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;
using sight::ViewingAngles;

const sight::FormatSight& sight_of(const Cell& c) {
    return c.study.sight.formats.at(static_cast<std::size_t>(c.format));
}

const ViewingAngles& angles(const Cell& c) {
    return sight_of(c).seats.at(static_cast<std::size_t>(c.index));
}

/// Records where the eye is and how large the opening.
void record_eye(const Cell& c, Working& w) {
    if (!w.recording()) return;
    const glm::dvec3 eye = c.study.seats.seats.at(static_cast<std::size_t>(c.index)).eye;
    w.input("x", "eye across", eye.x, Unit::metre);
    w.input("y", "eye up", eye.y, Unit::metre);
    w.input("z", "eye back", eye.z, Unit::metre);
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    w.input("W", "picture width, chord", opening.width_m, Unit::metre);
    w.input("H", "picture height", opening.height_m, Unit::metre);
    const glm::dvec3 centre = geometry::point_at(c.study.picture.surface, opening.uv.centre());
    w.input("y_c", "picture centre up", centre.y, Unit::metre);
    w.input("z_c", "picture centre back", centre.z, Unit::metre);
}

template <double ViewingAngles::*Member>
std::optional<double> angle(const Cell& c, Working& w) {
    record_eye(c, w);
    return angles(c).*Member;
}

std::optional<double> distance_ratio(const Cell& c, Working& w, bool by_width) {
    const auto& opening = c.study.picture.openings.at(static_cast<std::size_t>(c.format));
    const double distance =
        w.input("d", "eye to picture centre", angles(c).distance_m, Unit::metre);
    return distance / (by_width ? w.input("W", "picture width, chord", opening.width_m, Unit::metre)
                                : w.input("H", "picture height", opening.height_m, Unit::metre));
}

std::optional<double> distance_widths(const Cell& c, Working& w) {
    return distance_ratio(c, w, true);
}
std::optional<double> distance_heights(const Cell& c, Working& w) {
    return distance_ratio(c, w, false);
}

void record_rows(const Cell& c, std::optional<int> front_row, Working& w) {
    if (!w.recording() || !front_row) return;
    const auto& rows = c.study.seats.rows;
    const auto terms =
        sight::clearance_terms(rows.at(static_cast<std::size_t>(c.index)).centre_eye,
                               rows.at(static_cast<std::size_t>(*front_row)).centre_eye,
                               sight_of(c).rows.at(static_cast<std::size_t>(c.index)).focus);
    if (!terms) return;
    w.input("D", "front eye to the point of focus, level, along the sight line", terms->distance_m,
            Unit::metre);
    w.input("R", "front eye over the point of focus", terms->front_eye_height_m, Unit::metre);
    w.input("T", "tread between the two eyes, along the sight line", terms->tread_m, Unit::metre);
    w.input("N", "rear eye over front eye", terms->riser_m, Unit::metre);
}

std::optional<double> c_value(const Cell& c, Working& w) {
    record_rows(c, c.study.seats.rows.at(static_cast<std::size_t>(c.index)).row_in_front, w);
    return sight_of(c).rows.at(static_cast<std::size_t>(c.index)).c_m;
}

std::optional<double> c_value_second(const Cell& c, Working& w) {
    record_rows(c, c.study.seats.rows.at(static_cast<std::size_t>(c.index)).second_row_in_front, w);
    return sight_of(c).rows.at(static_cast<std::size_t>(c.index)).c_second_m;
}

const sight::SeatHidden& hidden_of(const Cell& c) {
    return sight_of(c).hidden.at(static_cast<std::size_t>(c.index));
}

/// Who stands in front, largest share first, so that a reader sees what to change.
void record_hiding(const Cell& c, Working& w) {
    if (!w.recording()) return;
    record_eye(c, w);
    const room::Audience& audience = c.study.layout().audience;
    w.input("b", "breadth of every head", audience.head_breadth_m, Unit::millimetre);
    w.input("e", "eye to crown of every head", audience.eye_to_crown_m, Unit::millimetre);
    constexpr std::size_t kMost = 6;
    std::vector<sight::HidingShare> shares =
        sight::seat_hiding_shares(sight_input(c.study), c.format, c.index);
    if (shares.size() > kMost) shares.resize(kMost);
    for (const sight::HidingShare& share : shares) {
        w.note((share.wall
                    ? std::string("a seat's back or a balcony")
                    : "the head in seat " +
                          c.study.seats.seats.at(static_cast<std::size_t>(share.index)).name) +
               " hides " + base::quantity_text(share.fraction, Unit::fraction));
    }
}

std::optional<double> hidden(const Cell& c, Working& w) {
    record_hiding(c, w);
    return hidden_of(c).hidden_fraction;
}

std::optional<double> clear_above(const Cell& c, Working& w) {
    record_eye(c, w);
    return hidden_of(c).clear_above_m;
}

constexpr Per kFs{.format = true, .seat = true};
constexpr Per kFw{.format = true, .row = true};
constexpr const char* kAngle = "derived: true angle at the eye";
constexpr const char* kC =
    "EN 13200-1 form (University of Bath sight-line worksheet); cinemas are outside that standard";

std::vector<FigureDefinition> angle_entries() {
    return {
        {"sight.subtended_width", Subject::sight, "Picture width at the eye", Unit::radian, kFs,
         "True angle between the mid-points of the picture's left and right edge.",
         "angle(left - eye, right - eye)", kAngle,
         "The picture is {value} wide from seat {seat} in {format}",
         angle<&ViewingAngles::subtended_width>},
        {"sight.subtended_height", Subject::sight, "Picture height at the eye", Unit::radian, kFs,
         "True angle between the mid-points of the picture's bottom and top edge.",
         "angle(bottom - eye, top - eye)", kAngle,
         "The picture is {value} high from seat {seat} in {format}",
         angle<&ViewingAngles::subtended_height>},
        {"sight.elevation_top", Subject::sight, "Up to the picture's top", Unit::radian, kFs,
         "From horizontal up to the middle of the picture's top edge.",
         "atan((y_top - y) / d_level)", kAngle,
         "Seat {seat} looks up {value} to the top of {format}",
         angle<&ViewingAngles::elevation_top>},
        {"sight.elevation_centre", Subject::sight, "Up to the picture's centre", Unit::radian, kFs,
         "From horizontal up to the picture's centre.", "atan((y_c - y) / d_level)", kAngle,
         "Seat {seat} looks up {value} to the centre of {format}",
         angle<&ViewingAngles::elevation_centre>},
        {"sight.off_axis", Subject::sight, "Off axis", Unit::radian, kFs,
         "Line from eye to picture centre against the surface's normal there, in plan.",
         "angle in plan(eye - centre, normal)", kAngle,
         "Seat {seat} sits {value} off the axis in {format}", angle<&ViewingAngles::off_axis>},
        {"sight.off_axis_far", Subject::sight, "Off axis, far edge", Unit::radian, kFs,
         "Line from eye to the farther side edge against the normal at the centre, in plan.",
         "angle in plan(eye - far edge, normal)", kAngle,
         "Seat {seat} sees the far edge at {value} in {format}",
         angle<&ViewingAngles::off_axis_far>},
        {"sight.distance_widths", Subject::sight, "Distance in widths", Unit::ratio, kFs,
         "Eye to picture centre over the picture's width.", "d / W", "derived: ratio",
         "Seat {seat} sits {value} picture widths away in {format}", distance_widths},
        {"sight.distance_heights", Subject::sight, "Distance in heights", Unit::ratio, kFs,
         "Eye to picture centre over the picture's height.", "d / H", "derived: ratio",
         "Seat {seat} sits {value} picture heights away in {format}", distance_heights},
    };
}

std::vector<FigureDefinition> hidden_entries() {
    return {
        {"sight.hidden", Subject::sight, "Picture hidden", Unit::fraction, kFs,
         "Part of the picture's area that heads, seat backs and balconies in front hide in a full "
         "house of equal people; what two hide together counts once.",
         "area of the union of silhouettes / area of the picture",
         "derived: silhouettes on the picture surface; head and seat shapes: common practice, no "
         "source",
         "{value} of {format} is hidden from seat {seat}", hidden},
        {"sight.clear_above", Subject::sight, "Clear from", Unit::millimetre, kFs,
         "Height over the picture's lower edge from which nothing is hidden anywhere across it.",
         "greatest height of any silhouette over the lower edge",
         "derived: silhouettes on the picture surface",
         "From seat {seat} {format} is whole only from {value} up", clear_above},
    };
}

std::vector<FigureDefinition> row_entries() {
    return {
        {"sight.c_value", Subject::sight, "C-value", Unit::millimetre, kFw,
         "What the row sees over the row in front, along its own centre line, to the nearest point "
         "of the picture's lower edge.",
         "C = D (N + R) / (D + T) - R", kC,
         "Row {row} sees {value} over the row in front in {format}", c_value},
        {"sight.c_value_second", Subject::sight, "C-value, second row", Unit::millimetre, kFw,
         "The same over the second row in front, where the seats are staggered.",
         "C = D (N + R) / (D + T) - R", kC,
         "Row {row} sees {value} over the second row in front in {format}", c_value_second},
    };
}

}  // namespace

std::span<const FigureDefinition> sight_figures() {
    static const std::vector<FigureDefinition> entries = [] {
        std::vector<FigureDefinition> all = angle_entries();
        for (const auto& more : {hidden_entries(), row_entries()})
            all.insert(all.end(), more.begin(), more.end());
        return all;
    }();
    return entries;
}

}  // namespace rakeline::study
