// SPDX-License-Identifier: MIT
#include "base/number_text.hpp"
#include "base/quantity_text.hpp"
#include "report/figure_words.hpp"
#include "report/report.hpp"

namespace rakeline::report {
namespace {

/// RFC 4180: quoted where a comma, a quote or a line end stands inside.
std::string field(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char c : text) {
        if (c == '"') quoted += '"';
        quoted += c;
    }
    return quoted + '"';
}

std::string number(double si, base::Unit unit) {
    return base::exact_text(base::json_value(si, unit));
}

std::vector<const study::Figure*> seat_figures(const study::Study& study) {
    std::vector<const study::Figure*> figures;
    for (const study::Figure& figure : study.figures)
        if (figure.definition->axis() == study::Axis::seat) figures.push_back(&figure);
    return figures;
}

std::string head(const study::Study& study, const study::Figure& figure) {
    std::string text =
        std::string(figure.definition->id) + " [" + base::json_unit(figure.definition->unit) + "]";
    const std::string of = figure_of(study, figure, "/");
    return of.empty() ? text : text + " " + of;
}

}  // namespace

std::string seat_csv(const study::Study& study) {
    const auto figures = seat_figures(study);
    std::string csv = "seat,row,number,wheelchair,across [m],up [m],back [m],eye up [m]";
    for (const study::Figure* figure : figures)
        csv += "," + field(head(study, *figure));
    csv += "\r\n";
    for (std::size_t i = 0; i < study.seats.seats.size(); ++i) {
        const room::Seat& seat = study.seats.seats[i];
        csv += field(seat.name) + "," +
               field(study.seats.rows.at(static_cast<std::size_t>(seat.row)).letter) + "," +
               std::to_string(seat.number) + "," + (seat.wheelchair ? "1" : "0");
        for (const double metres : {seat.floor.x, seat.floor.y, seat.floor.z, seat.eye.y})
            csv += "," + number(metres, base::Unit::metre);
        for (const study::Figure* figure : figures) {
            const auto value = study::value_at(*figure, static_cast<int>(i));
            csv += "," + (value ? number(*value, figure->definition->unit) : std::string());
        }
        csv += "\r\n";
    }
    return csv;
}

}  // namespace rakeline::report
