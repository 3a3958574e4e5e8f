// SPDX-License-Identifier: MIT
#include "command/meter_text.hpp"

#include "base/number_text.hpp"
#include "command/text_table.hpp"
#include "study/meter_words.hpp"

#include <cmath>

namespace rakeline::command {
namespace {

using Cells = std::vector<std::string>;

std::string joined(const std::vector<std::string>& lines, const std::string& before = "") {
    std::string out;
    for (const std::string& line : lines)
        out += before + line + "\n";
    return out;
}

/// With a sign before it, unless it prints as nought.
std::string signed_text(const std::string& number) {
    const bool nought = number.find_first_of("123456789") == std::string::npos;
    return nought || number.starts_with('-') ? number : "+" + number;
}

std::string heading(const study::Study& study, const study::MeterSubject& subject) {
    const room::Layout& layout = study.layout();
    std::string out = layout.name + ": " +
                      layout.projectors.at(static_cast<std::size_t>(subject.projector)).name +
                      " in " + layout.formats.at(static_cast<std::size_t>(subject.format)).name;
    if (subject.seat)
        out += ", luminance read from " +
               study.seats.seats.at(static_cast<std::size_t>(*subject.seat)).name;
    return out + "\n";
}

Cells part_cells(const light::MeterFit& fit, light::LawPart which) {
    const light::FittedPart& part = fit.part(which);
    const base::Unit unit = study::meter_part_unit(which);
    const bool held = part.state == light::PartState::held;
    const std::string error = part.error ? base::quantity_text(*part.error, unit)
                              : held     ? "held"
                                         : "at its bound";
    return {study::meter_part_name(which), base::quantity_text(part.value, unit), error,
            base::quantity_text(part.layout_value, unit)};
}

std::string parts_table(const light::MeterFit& fit) {
    std::vector<Cells> table{{"From the lens", "Fitted", "Standard error", "Layout"}};
    for (int part = 0; part < light::kLawParts; ++part)
        table.push_back(part_cells(fit, static_cast<light::LawPart>(part)));
    return joined(table_lines(table, 1));
}

/// Nought where rounding is all that is left.
double residual_told(const light::FittedReading& reading) {
    return std::abs(reading.residual()) < 1e-9 * reading.read ? 0.0 : reading.residual();
}

std::string readings_table(const study::MeterCheck& check, base::UnitSystem system) {
    std::vector<Cells> table{{"Reading", "Read", "Fitted", "Residual", "of fitted", "in errors"}};
    for (std::size_t i = 0; i < check.places.size(); ++i) {
        const light::FittedReading& reading = check.fit.readings[i];
        const base::Unit unit = check.places[i].row.unit;
        const auto text = [&](double si) { return base::quantity_text(si, unit, system, 1); };
        table.push_back({study::meter_place_name(check, i, system), text(reading.read),
                         text(reading.fitted), signed_text(text(residual_told(reading))),
                         study::meter_residual_text(reading),
                         signed_text(base::fixed_text(reading.residual_errors(), 1))});
    }
    return joined(table_lines(table, 1));
}

/// Which fitted parts go together: a list, since most pairs hardly do.
std::string correlation_text(const light::MeterFit& fit) {
    std::string out;
    for (std::size_t i = 0; i < light::kLawParts; ++i) {
        for (std::size_t j = i + 1; j < light::kLawParts; ++j) {
            const bool both = fit.parts[i].error && fit.parts[j].error;
            if (!both) continue;
            out += (out.empty() ? "" : "; ") +
                   std::string(study::meter_part_name(static_cast<light::LawPart>(i))) + " with " +
                   study::meter_part_name(static_cast<light::LawPart>(j)) + " " +
                   base::fixed_text(fit.correlation[i][j], 2);
        }
    }
    return out.empty() ? out : "Correlation: " + out + "\n";
}

}  // namespace

std::string meter_text(const study::Study& study,
                       const study::MeterCheck& check,
                       base::UnitSystem system) {
    std::string out = heading(study, check.subject) + "\n" + parts_table(check.fit) +
                      correlation_text(check.fit) + "\n" + readings_table(check, system) + "\n" +
                      joined(study::meter_notes(check, system)) + "\nWhat it suggests\n" +
                      joined(study::meter_advice(study, check, system), "  ");
    const auto cautions = study::meter_cautions(study, check);
    if (!cautions.empty()) out += "\nCautions\n" + joined(cautions, "  ");
    return out;
}

}  // namespace rakeline::command
