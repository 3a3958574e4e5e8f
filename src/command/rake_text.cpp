// SPDX-License-Identifier: MIT
#include "command/rake_text.hpp"

#include "command/text_table.hpp"
#include "sight/aisle_steps.hpp"
#include "study/rake_words.hpp"

#include <algorithm>

namespace rakeline::command {
namespace {

using base::Unit;
using Cells = std::vector<std::string>;

std::string joined(const std::vector<std::string>& lines) {
    std::string out;
    for (const std::string& line : lines)
        out += line + "\n";
    return out;
}

class RakeWriter {
public:
    RakeWriter(const sight::RakePlan& plan, double step_most_m, base::UnitSystem system)
        : plan_(plan), step_most_(step_most_m), system_(system) {}

    std::string rows() const {
        std::vector<Cells> table{row_heads()};
        for (std::size_t n = 0; n < plan_.rows.rows.size(); ++n)
            table.push_back(row(n));
        return joined(table_lines(table, 1));
    }

    std::string restrictions() const {
        const std::string mm = unit(Unit::millimetre);
        std::vector<Cells> table{{"Restriction", "Rise " + unit(Unit::metre), "Least C " + mm,
                                  "in row", "over wanted " + mm, "short of wanted " + mm,
                                  "costs in C " + mm}};
        double short_before = 0.0;
        for (const sight::RakeStage& stage : plan_.stages)
            table.push_back(restriction(stage, short_before));
        return joined(table_lines(table, 1));
    }

private:
    std::string number(double si, Unit unit) const {
        return base::quantity(si, unit, system_).number;
    }
    std::string unit(Unit unit) const { return base::quantity(0.0, unit, system_).unit; }

    Cells row_heads() const {
        const std::string mm = unit(Unit::millimetre);
        Cells out{"Row", "Exact riser " + mm, "Built riser " + mm, "Aisle steps " + mm,
                  "Floor " + unit(Unit::metre)};
        for (const sight::RakeStage& stage : plan_.stages)
            out.push_back("C " + std::string(sight::restriction_name(stage.restriction)) + " " +
                          mm);
        return out;
    }

    std::string riser(const std::vector<double>& floor_m, std::size_t n) const {
        if (n == 0 || floor_m.empty()) return "-";
        return number(floor_m[n] - floor_m[n - 1], Unit::millimetre);
    }

    /// "2 x 145.0".
    std::string steps(std::size_t n) const {
        const auto& floor = plan_.built().floor_m;
        if (n == 0 || floor.empty()) return "-";
        const auto steps =
            sight::aisle_steps(floor[n] - floor[n - 1], plan_.rows.rows[n].spacing_m, step_most_);
        if (steps.count == 0) return "level";
        return std::to_string(steps.count) + " x " + number(steps.riser_m, Unit::millimetre);
    }

    Cells row(std::size_t n) const {
        const auto& built = plan_.built().floor_m;
        Cells out{plan_.rows.rows[n].letter, riser(plan_.stages.front().floor_m, n),
                  riser(built, n), steps(n), built.empty() ? "-" : number(built[n], Unit::metre)};
        for (const sight::RakeStage& stage : plan_.stages) {
            const bool seen = !stage.floor_m.empty() && stage.sights[n];
            out.push_back(seen ? number(stage.sights[n]->c_m, Unit::millimetre) : "-");
        }
        return out;
    }

    Cells restriction(const sight::RakeStage& stage, double& short_before) const {
        Cells out{study::restriction_title(stage.restriction)};
        if (stage.floor_m.empty() || !stage.least_row) {
            out.insert(out.end(), {"-", "-", "-", "-", "-", "-"});
            return out;
        }
        const double spare = stage.spare_m(plan_.options.wanted_c_m);
        const double short_by = stage.meets ? 0.0 : -spare;
        const auto row = static_cast<std::size_t>(*stage.least_row);
        out.push_back(number(stage.rise_m(), Unit::metre));
        out.push_back(number(stage.sights[row]->c_m, Unit::millimetre));
        out.push_back(plan_.rows.rows[row].letter);
        out.push_back(number(std::max(spare, 0.0), Unit::millimetre));
        out.push_back(number(short_by, Unit::millimetre));
        out.push_back(number(short_by - short_before, Unit::millimetre));
        short_before = short_by;
        return out;
    }

    const sight::RakePlan& plan_;
    double step_most_;
    base::UnitSystem system_;
};

std::string wanted(const sight::RakeOptions& options, base::UnitSystem system) {
    return "C " + base::quantity_text(options.wanted_c_m, Unit::millimetre, system) +
           (options.over == sight::RakeOver::row_in_front ? " over the row in front"
                                                          : " over the row two ahead");
}

std::string decided(const room::Layout& layout,
                    const sight::RakeRows& rows,
                    const sight::ReverseRake& found) {
    return "row " + rows.rows.at(static_cast<std::size_t>(found.row)).letter + " in " +
           layout.formats.at(static_cast<std::size_t>(found.format)).name;
}

std::string spacing_end(const room::Layout& layout,
                        const sight::RakeRows& rows,
                        const sight::ReverseRake& found,
                        bool undecided,
                        base::UnitSystem system) {
    return base::quantity_text(found.value_m, Unit::metre, system, 1) +
           (undecided ? " (the end of what is tried)"
                      : " (decided by " + decided(layout, rows, found) + ")");
}

}  // namespace

std::string rake_text(const room::Layout& layout,
                      int block,
                      const sight::RakePlan& plan,
                      double step_most_m,
                      base::UnitSystem system) {
    const RakeWriter writer(plan, step_most_m, system);
    std::string out = layout.name + ": floor of " +
                      layout.seating.at(static_cast<std::size_t>(block)).name + ", wanted " +
                      wanted(plan.options, system) + "\n" + study::rake_verdict(plan, system) +
                      "\n\n" + writer.rows() + "\n" + writer.restrictions() + "\n";
    for (const std::string& caution : study::rake_cautions(plan, step_most_m, system))
        out += caution + "\n";
    return out;
}

std::string sill_text(const room::Layout& layout,
                      const sight::RakeOptions& options,
                      const std::optional<sight::ReverseRake>& found,
                      const sight::RakeRows& rows,
                      base::UnitSystem system) {
    if (!found) return "No row looks over another: any sill does.\n";
    return "Lowest sill for " + wanted(options, system) + ": " +
           base::quantity_text(found->value_m, Unit::metre, system, 1) + ", now " +
           base::quantity_text(layout.screen.sill_m, Unit::metre, system, 1) + "; " +
           decided(layout, rows, *found) + " decides.\n";
}

std::string spacing_text(const room::Layout& layout,
                         const sight::RakeOptions& options,
                         const std::optional<sight::SpacingRange>& found,
                         const sight::RakeRows& rows,
                         base::UnitSystem system) {
    if (!found) {
        return "No row spacing from " +
               base::quantity_text(sight::kLeastSpacing_m, Unit::metre, system) + " to " +
               base::quantity_text(sight::kGreatestSpacing_m, Unit::metre, system) + " gives " +
               wanted(options, system) + " on this floor.\n";
    }
    return "Row spacing for " + wanted(options, system) + ": from " +
           spacing_end(layout, rows, found->least, found->from_bottom, system) + " to " +
           spacing_end(layout, rows, found->greatest, found->to_top, system) +
           ".\nWhether people can pass along the rows is for the local code, not for this sum.\n";
}

}  // namespace rakeline::command
