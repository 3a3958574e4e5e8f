// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;

std::optional<double> seats(const Cell& c, Working&) {
    return static_cast<double>(c.study.seats.seats.size());
}

std::optional<double> wheelchair_places(const Cell& c, Working&) {
    const auto& all = c.study.seats.seats;
    return static_cast<double>(
        std::count_if(all.begin(), all.end(), [](const auto& seat) { return seat.wheelchair; }));
}

std::optional<double> floor_area(const Cell& c, Working& w) {
    const room::Hall& hall = c.study.layout().hall;
    const double width = w.input("W", "hall width at the screen wall", hall.width_m, Unit::metre);
    const double length = w.input("L", "hall length", hall.length_m, Unit::metre);
    const double splay = w.input("s", "splay of each side wall", hall.splay_rad, Unit::radian);
    return length * (width + length * std::tan(splay));
}

std::optional<double> volume(const Cell& c, Working& w) {
    const double area = w.input("A", "floor area", *floor_area(c, w), Unit::square_metre);
    return area * w.input("H", "height of the ceiling over the datum",
                          c.study.layout().hall.height_m, Unit::metre);
}

std::optional<double> volume_per_seat(const Cell& c, Working& w) {
    const double n = w.input("n", "seats", *seats(c, w), Unit::count);
    if (n == 0.0) return std::nullopt;
    return w.input("V", "volume", *volume(c, w), Unit::cubic_metre) / n;
}

/// Level distance of a row's eyes, on its block's centre line, to the picture surface's middle.
double screen_distance(const Study& study, const room::Row& row) {
    return row.centre_eye.z - study.picture.surface.centre.z;
}

std::optional<double> first_row_distance(const Cell& c, Working&) {
    const auto& rows = c.study.seats.rows;
    if (rows.empty()) return std::nullopt;
    double least = screen_distance(c.study, rows.front());
    for (const auto& row : rows)
        least = std::min(least, screen_distance(c.study, row));
    return least;
}

std::optional<double> last_row_distance(const Cell& c, Working&) {
    const auto& rows = c.study.seats.rows;
    if (rows.empty()) return std::nullopt;
    double most = screen_distance(c.study, rows.front());
    for (const auto& row : rows)
        most = std::max(most, screen_distance(c.study, row));
    return most;
}

std::optional<double> riser(const Cell& c, Working& w) {
    const auto& row = c.study.seats.rows.at(static_cast<std::size_t>(c.index));
    if (!row.row_in_front) return std::nullopt;
    const auto& front = c.study.seats.rows.at(static_cast<std::size_t>(*row.row_in_front));
    const double here = w.input("y", "floor of this row", row.centre_floor.y, Unit::metre);
    return here - w.input("y'", "floor of the row in front", front.centre_floor.y, Unit::metre);
}

}  // namespace

std::span<const FigureDefinition> room_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"room.seats",
         Subject::room,
         "Seats",
         Unit::count,
         {},
         "Seats placed, wheelchair places included.",
         "n",
         "derived: the seating blocks",
         "The room has {value} seats",
         seats},
        {"room.wheelchair_places",
         Subject::room,
         "Wheelchair places",
         Unit::count,
         {},
         "Places kept free for wheelchairs.",
         "n",
         "derived: the seating blocks",
         "The room has {value} wheelchair places",
         wheelchair_places},
        {"room.floor_area",
         Subject::room,
         "Floor area",
         Unit::square_metre,
         {},
         "Plan area between the walls.",
         "A = L (W + L tan s)",
         "derived: trapezium of the plan",
         "The floor measures {value}",
         floor_area},
        {"room.volume",
         Subject::room,
         "Volume",
         Unit::cubic_metre,
         {},
         "Between the walls, floor datum to ceiling; the raked floor is not taken off.",
         "V = A H",
         "derived: prism over the plan",
         "The hall holds {value}",
         volume},
        {"room.volume_per_seat",
         Subject::room,
         "Volume a seat",
         Unit::cubic_metre,
         {},
         "Volume over the number of seats.",
         "V / n",
         "derived: ratio of two figures",
         "There are {value} to a seat",
         volume_per_seat},
        {"room.first_row_distance",
         Subject::room,
         "First row to screen",
         Unit::metre,
         {},
         "Level distance from the nearest row's eyes to the middle of the picture surface.",
         "z_eye - z_screen",
         "derived: seat plan",
         "The first row sits {value} from the screen",
         first_row_distance},
        {"room.last_row_distance",
         Subject::room,
         "Last row to screen",
         Unit::metre,
         {},
         "Level distance from the farthest row's eyes to the middle of the picture surface.",
         "z_eye - z_screen",
         "derived: seat plan",
         "The last row sits {value} from the screen",
         last_row_distance},
        {"room.riser",
         Subject::room,
         "Riser",
         Unit::millimetre,
         {.row = true},
         "Floor of a row over the floor of the row in front.",
         "y - y'",
         "derived: seat plan",
         "Row {row} rises {value} over the row in front",
         riser},
    };
    return entries;
}

}  // namespace rakeline::study
