// SPDX-License-Identifier: MIT
#include "study/sight_cells.hpp"

#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;

constexpr const char* kC =
    "EN 13200-1 form (University of Bath sight-line worksheet); cinemas are outside that standard";

const room::Row& row_at(const Cell& c, int row) {
    return c.study.seats.rows.at(static_cast<std::size_t>(row));
}

const sight::RowEnds& ends_of(const Cell& c) {
    return sight_of(c).ends.at(static_cast<std::size_t>(c.index));
}

void record_rows(const Cell& c, std::optional<int> front_row, Working& w) {
    if (!front_row) return;
    record_clearance(row_at(c, c.index).centre_eye, row_at(c, *front_row).centre_eye,
                     sight_of(c).rows.at(static_cast<std::size_t>(c.index)).focus, "eye", w);
}

/// Both ends of a row, so that a reader sees which was taken and what the other has.
void note_end(const Cell& c, int seat, const std::optional<sight::OverRow>& over, Working& w) {
    const std::string& name = c.study.seats.seats.at(static_cast<std::size_t>(seat)).name;
    w.note(over ? "seat " + name + " sees " + base::quantity_text(over->c_m, Unit::millimetre)
                : "the sight line of seat " + name + " passes beside the row in front");
}

std::optional<double> worse_end(const Cell& c,
                                const std::optional<sight::OverRow>& left,
                                const std::optional<sight::OverRow>& right,
                                Working& w) {
    if (!left && !right) return std::nullopt;
    const sight::OverRow& worse = sight::right_end_is_worse(left, right) ? *right : *left;
    if (w.recording()) {
        const room::Row& row = row_at(c, c.index);
        record_clearance(worse.rear, worse.front, worse.focus, "eye", w);
        note_end(c, row.first_seat, left, w);
        note_end(c, row.first_seat + row.seat_count - 1, right, w);
    }
    return worse.c_m;
}

std::optional<double> c_value(const Cell& c, Working& w) {
    record_rows(c, row_at(c, c.index).row_in_front, w);
    return sight_of(c).rows.at(static_cast<std::size_t>(c.index)).c_m;
}

std::optional<double> c_value_second(const Cell& c, Working& w) {
    record_rows(c, row_at(c, c.index).second_row_in_front, w);
    return sight_of(c).rows.at(static_cast<std::size_t>(c.index)).c_second_m;
}

std::optional<double> c_value_ends(const Cell& c, Working& w) {
    return worse_end(c, ends_of(c).left, ends_of(c).right, w);
}

std::optional<double> c_value_second_ends(const Cell& c, Working& w) {
    return worse_end(c, ends_of(c).second_left, ends_of(c).second_right, w);
}

}  // namespace

/// One figure for both ends: the same limit holds both, and a room that misses it at both ends of
/// every row should say so once. The working names the two seats.
std::span<const FigureDefinition> row_figures() {
    static const std::vector<FigureDefinition> entries = {
        {"sight.c_value", Subject::sight, "C-value", Unit::millimetre, kFormatRow,
         "What the row sees over the row in front, along its own centre line, to the nearest point "
         "of the picture's lower edge.",
         "C = D (N + R) / (D + T) - R", kC,
         "Row {row} sees {value} over the row in front in {format}", c_value},
        {"sight.c_value_second", Subject::sight, "C-value, second row", Unit::millimetre,
         kFormatRow, "The same over the second row in front, where the seats are staggered.",
         "C = D (N + R) / (D + T) - R", kC,
         "Row {row} sees {value} over the second row in front in {format}", c_value_second},
        {"sight.c_value_ends", Subject::sight, "C-value, row ends", Unit::millimetre, kFormatRow,
         "The least that the two end seats of a row see over the row in front, each along its own "
         "sight line, over the eyes that this line crosses. None where it passes beside the row.",
         "C = D (N + R) / (D + T) - R", kC,
         "Row {row} sees {value} over the row in front from its worse end in {format}",
         c_value_ends},
        {"sight.c_value_second_ends", Subject::sight, "C-value, second row, row ends",
         Unit::millimetre, kFormatRow,
         "The same over the second row in front, where the seats are staggered.",
         "C = D (N + R) / (D + T) - R", kC,
         "Row {row} sees {value} over the second row in front from its worse end in {format}",
         c_value_second_ends},
    };
    return entries;
}

}  // namespace rakeline::study
