// SPDX-License-Identifier: MIT
#include "report/chapters.hpp"
#include "report/figure_words.hpp"
#include "report/table.hpp"

#include <algorithm>

namespace rakeline::report {
namespace {

using drawing::Anchor;

struct SeatColumn {
    const char* id;
    const char* head;
};

/// What one reads a seat by; those that the register or the room does not have are left out.
constexpr SeatColumn kSeatColumns[] = {
    {"sight.distance_widths", "distance, widths"}, {"sight.subtended_width", "picture width"},
    {"sight.elevation_top", "up to picture top"},  {"sight.off_axis", "off axis"},
    {"sight.off_axis_far", "off axis, far edge"},  {"sight.hidden", "hidden"},
    {"sight.clear_chance", "clear chance"},        {"light.luminance", "luminance"},
    {"light.side_ratio", "sides over centre"},     {"light.corner_ratio", "corners over centre"},
    {"sound.direct_level", "centre, 1 kHz"},       {"sound.arrival_spread", "arrival spread"},
};

std::optional<int> centre_channel(const room::Layout& layout) {
    for (std::size_t i = 0; i < layout.loudspeakers.size(); ++i)
        if (layout.loudspeakers[i].channel == room::Channel::centre) return static_cast<int>(i);
    return std::nullopt;
}

int band_of(double frequency_hz) {
    const auto found = std::find(sound::kOctaves.begin(), sound::kOctaves.end(), frequency_hz);
    return static_cast<int>(found - sound::kOctaves.begin());
}

struct Shown {
    const study::Figure* figure = nullptr;
    std::string head;
};

std::vector<Shown> shown_figures(const ReportInput& in) {
    study::Place place;
    place.projector = std::max(in.projector, 0);
    place.format = std::max(in.format, 0);
    place.band = band_of(1000.0);
    place.loudspeaker = centre_channel(in.study.layout());
    std::vector<Shown> shown;
    for (const SeatColumn& column : kSeatColumns) {
        // Without a centre channel another's level would stand under its name.
        if (!place.loudspeaker && std::string_view(column.id) == "sound.direct_level") continue;
        const study::Figure* figure = study::find_figure(in.study, column.id, place);
        if (!figure || figure->values.empty()) continue;
        const std::string unit =
            base::quantity(figure->values.front().si, figure->definition->unit, in.units()).unit;
        shown.push_back({figure, std::string(column.head) + (unit.empty() ? "" : "\n" + unit)});
    }
    return shown;
}

/// Values by seat, so that each cell is one look-up.
std::vector<TableCell> column_cells(const Pages& pages, const ReportInput& in, const Shown& shown) {
    std::vector<TableCell> cells(in.study.seats.seats.size(), {"–", pages.theme().quiet});
    const study::Figure& figure = *shown.figure;
    for (std::size_t i = 0; i < figure.values.size(); ++i) {
        const study::Verdict verdict = figure.verdicts.at(i);
        const std::string number =
            base::quantity(figure.values[i].si, figure.definition->unit, in.units()).number;
        TableCell& cell = cells.at(static_cast<std::size_t>(figure.values[i].index));
        cell = {number, {}, false};
        if (verdict != study::Verdict::missed && verdict != study::Verdict::near) continue;
        cell.text = std::string(study::verdict_mark(verdict)) + " " + number;
        cell.colour = verdict_colour(pages.theme(), verdict);
    }
    return cells;
}

std::string seat_name(const study::Study& study, std::size_t i) {
    const room::Seat& seat = study.seats.seats[i];
    std::string name = seat.name;
    if (seat.wheelchair) name += " w";
    if (study.reference_seat == static_cast<int>(i)) name += " r";
    return name;
}

}  // namespace

void draw_seat_table(Pages& pages, const ReportInput& in) {
    if (in.study.seats.seats.empty()) return;
    pages.chapter("Seat by seat");
    pages.paragraph(
        chosen_text(in) +
            "   ·   ✗ misses, △ near its limit   ·   w wheelchair place, r reference seat",
        pages.quiet());
    pages.gap(4.0);
    std::vector<Column> columns = {{"seat", 50, Anchor::left}};
    std::vector<std::vector<TableCell>> cells;
    for (const Shown& shown : shown_figures(in)) {
        columns.push_back({shown.head, 54, Anchor::right});
        cells.push_back(column_cells(pages, in, shown));
    }
    std::vector<TableRow> rows;
    for (std::size_t seat = 0; seat < in.study.seats.seats.size(); ++seat) {
        TableRow row{{{seat_name(in.study, seat), {}, true}}};
        // A hairline where a new row of seats begins is enough to read along.
        row.ruled =
            seat == 0 || in.study.seats.seats[seat].row != in.study.seats.seats[seat - 1].row;
        for (const auto& column : cells)
            row.cells.push_back(column[seat]);
        rows.push_back(std::move(row));
    }
    draw_table(pages, columns, rows, {.size_pt = 7.0, .pad_pt = 1.1});
}

}  // namespace rakeline::report
