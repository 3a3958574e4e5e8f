// SPDX-License-Identifier: MIT
#include "command/perforation_text.hpp"

#include "base/number_text.hpp"
#include "command/text_table.hpp"
#include "study/perforation_words.hpp"

#include <vector>

namespace rakeline::command {
namespace {

using base::Unit;
using study::SheetTrial;
using Row = std::vector<std::string>;

std::string number(const std::optional<double>& value, int decimals) {
    return value ? base::fixed_text(*value, decimals) : "-";
}

Row row_of(std::size_t i, const SheetTrial& t, base::UnitSystem system) {
    const auto text = [&](double si, Unit unit) { return base::quantity_text(si, unit, system); };
    return {i == 0 ? "now" : std::to_string(i),
            t.sheet.name,
            study::sheet_sight_words(study::sight_of(t)),
            text(t.loss_10k_db, Unit::decibel),
            text(t.open_area, Unit::fraction),
            base::fixed_text(100.0 * (t.light_over_present - 1.0), 1) + " %",
            number(t.hole_minutes, 2),
            t.hole_seats ? text(*t.hole_seats, Unit::fraction) : "-",
            number(t.beat, 2)};
}

std::string table(const study::SheetTrials& trials, base::UnitSystem system) {
    std::vector<Row> rows{
        {"", "sheet", "", "10 kHz", "light lost", "picture", "hole, min", "seats", "beat"}};
    for (std::size_t i = 0; i < trials.trials.size(); ++i)
        rows.push_back(row_of(i, trials.trials[i], system));
    std::string out;
    for (const std::string& line : table_lines(rows, 3))
        out += line + "\n";
    return out;
}

/// The beat of every picture that the room has, as the sheet hangs.
std::string beats_of(const study::Study& study, base::UnitSystem system) {
    std::string out;
    for (const picture::ProjectedPicture& p : study.picture.pictures) {
        const room::Layout& layout = study.layout();
        out += "  " + layout.projectors.at(static_cast<std::size_t>(p.projector)).name + " in " +
               layout.formats.at(static_cast<std::size_t>(p.format)).name + ": " +
               study::beat_words(study, p.projector, p.format, system) + "\n";
    }
    return out;
}

}  // namespace

std::string perforation_text(const study::Study& study,
                             const study::SheetTrials& trials,
                             base::UnitSystem system) {
    std::string out =
        study.layout().name + ": holes of the screen, " +
        study::sheet_words(study.layout().screen.perforation, system) + "\n\n" +
        table(trials, system) +
        "  hole, min: minutes of arc from the nearest seat; beat: times the eye's threshold\n\n" +
        beats_of(study, system) + "  " + study::turn_words(trials, system) + "\n\n";
    for (const std::string& line : study::sheet_scope(study))
        out += line + "\n";
    return out;
}

}  // namespace rakeline::command
