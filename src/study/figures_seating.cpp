// SPDX-License-Identifier: MIT
#include "study/study.hpp"

#include <vector>

/// Where each row is: what one needs to set it out, and to check its sight lines by hand.
namespace rakeline::study {
namespace {

using base::Unit;

const room::Row& row_of(const Cell& c) {
    return c.study.seats.rows.at(static_cast<std::size_t>(c.index));
}

std::optional<double> row_distance(const Cell& c, Working& w) {
    const double eye = w.input("z_eye", "eyes behind the screen wall, on the block's centre line",
                               row_of(c).centre_eye.z, Unit::metre);
    return eye - w.input("z_screen", "middle of the picture surface behind the screen wall",
                         c.study.picture.surface.centre.z, Unit::metre);
}

std::optional<double> row_floor(const Cell& c, Working&) {
    return row_of(c).centre_floor.y;
}

std::optional<double> row_eye(const Cell& c, Working& w) {
    const double floor = w.input("y", "floor of the row", row_of(c).centre_floor.y, Unit::metre);
    return floor + w.input("e", "seated eye over the floor", c.study.layout().audience.eye_height_m,
                           Unit::metre);
}

constexpr Per kRow{.row = true};

}  // namespace

std::span<const FigureDefinition> seating_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"room.row_distance", Subject::room, "Row to screen", Unit::metre, kRow,
         "Level distance from a row's eyes, on its block's centre line, to the middle of the "
         "picture surface.",
         "z_eye - z_screen", "derived: seat plan", "Row {row} sits {value} from the screen",
         row_distance},
        {"room.row_floor", Subject::room, "Floor of the row", Unit::metre, kRow,
         "Floor of a row over the floor datum, on its block's centre line.", "y",
         "derived: seat plan", "Row {row} stands {value} over the floor datum", row_floor},
        {"room.row_eye", Subject::room, "Eyes of the row", Unit::metre, kRow,
         "Seated eyes of a row over the floor datum, on its block's centre line.", "y + e",
         "derived: seat plan", "The eyes of row {row} are {value} over the floor datum", row_eye},
    };
    return entries;
}

}  // namespace rakeline::study
