// SPDX-License-Identifier: MIT
#include "study/sight_cells.hpp"

#include <vector>

/// Sight over people who stand or pass in a cross aisle.
namespace rakeline::study {
namespace {

using base::Unit;

void record_people(const Cell& c, Working& w) {
    const room::Audience& audience = c.study.layout().audience;
    w.input("S", "stature of who stands in the aisle", audience.standing_height_m, Unit::metre);
    w.input("p", "from one to the next, shoulder to shoulder", sight::standing_pitch(audience),
            Unit::metre);
}

/// The row in front of the aisle, which says where the person stands.
void note_aisle(const Cell& c, const sight::OverStanding& over, Working& w) {
    const auto& rows = c.study.seats.rows;
    const auto lines = cross_aisles(c.study);
    const int behind = lines.at(static_cast<std::size_t>(over.aisle)).row_behind;
    w.note("over someone in the cross aisle in front of row " +
           rows.at(static_cast<std::size_t>(behind)).letter);
}

std::optional<double> c_standing(const Cell& c, Working& w) {
    const auto& over = sight_of(c).standing.at(static_cast<std::size_t>(c.index));
    if (!over) return std::nullopt;
    if (w.recording()) {
        const glm::dvec3 eye = c.study.seats.rows.at(static_cast<std::size_t>(c.index)).centre_eye;
        w.input("S", "stature of who stands in the aisle",
                c.study.layout().audience.standing_height_m, Unit::metre);
        record_clearance(eye, over->crown, over->focus, "crown", w);
        note_aisle(c, *over, w);
    }
    return over->c_m;
}

std::optional<double> hidden_standing(const Cell& c, Working& w) {
    const auto& hidden = sight_of(c).hidden_standing.at(static_cast<std::size_t>(c.index));
    if (hidden && w.recording()) {
        record_eye(c, w);
        record_people(c, w);
    }
    return hidden;
}

}  // namespace

std::span<const FigureDefinition> standing_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.c_standing", Subject::sight, "C-value, over standing", Unit::millimetre, kFormatRow,
         "What a row behind a cross aisle sees over the crown of someone who stands in the aisle's "
         "middle, along the row's own centre line, to the nearest point of the picture's lower "
         "edge; negative where the crown hides it. Of several aisles in front, the least.",
         "C = D (N + R) / (D + T) - R", "derived: the C-value's form with the crown for the eye",
         "Row {row} sees {value} over someone who stands in the cross aisle in {format}",
         c_standing},
        {"sight.hidden_standing", Subject::sight, "Picture hidden, people standing", Unit::fraction,
         kFormatSeat,
         "Part of the picture's area that is hidden from a seat behind a cross aisle while people "
         "stand shoulder to shoulder along every cross aisle, in a full house.",
         "area of the union of silhouettes / area of the picture",
         "derived: silhouettes on the picture surface; body shares by Drillis and Contini 1966, "
         "from memory",
         "{value} of {format} is hidden from seat {seat} while people stand in the cross aisle",
         hidden_standing},
    };
    return entries;
}

}  // namespace rakeline::study
