// SPDX-License-Identifier: MIT
#include "study/sight_cells.hpp"

#include <vector>

namespace rakeline::study {
namespace {

using base::Unit;

constexpr const char* kC =
    "EN 13200-1 form (University of Bath sight-line worksheet); cinemas are outside that standard";

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

}  // namespace

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
    };
    return entries;
}

}  // namespace rakeline::study
