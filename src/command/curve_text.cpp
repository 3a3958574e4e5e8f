// SPDX-License-Identifier: MIT
#include "command/curve_text.hpp"

#include "command/text_table.hpp"

#include <vector>

namespace rakeline::command {
namespace {

using base::Unit;
using light::CurvatureTrial;
using Row = std::vector<std::string>;

constexpr const char* kCautions =
    "Evenness is that of all seats and nine points of the picture. Focus, plates and lens follow "
    "once\n"
    "the surface is in the layout. A curved or tilted frame hangs over people: an engineer works "
    "out\n"
    "its loads, a competent rigger hangs it.\n";

class CurveWriter {
public:
    CurveWriter(const study::Study& study, base::UnitSystem system)
        : study_(study), system_(system) {}

    std::string now(const light::CurvatureHelp& help) const {
        if (!help.now) return "  the screen as it is gives no picture here\n";
        const CurvatureTrial& t = *help.now;
        return "  now: " + radius(t) + ", tilt " + text(t.tilt_rad, Unit::radian) +
               "; darkest over brightest " + text(t.evenness, Unit::fraction) + " (" +
               base::quantity(t.lowest_cdm2, Unit::cd_per_m2, system_).number + " to " +
               text(t.highest_cdm2, Unit::cd_per_m2) + "), sides over centre " +
               text(t.side_ratio, Unit::fraction) + " from " + seat(t) + "\n";
    }

    /// Every `step`-th trial, and the best, marked.
    std::string table(const std::vector<CurvatureTrial>& trials,
                      const std::optional<int>& best,
                      std::size_t step) const {
        std::vector<Row> rows{{"", "radius", "sagitta", "tilt", "evenness", "sides", "seat", "crop",
                               "dark", "bow", "keystone"}};
        for (std::size_t i = 0; i < trials.size(); ++i) {
            const bool is_best = best == static_cast<int>(i);
            if (i % step == 0 || is_best) rows.push_back(row(trials[i], is_best));
        }
        std::string out;
        for (const std::string& line : table_lines(rows, 1))
            out += line + "\n";
        return out;
    }

    std::string verdict(const std::vector<CurvatureTrial>& trials,
                        const std::optional<int>& best) const {
        if (!best) return "  none of these stands clear of the screen wall\n";
        const CurvatureTrial& t = trials[static_cast<std::size_t>(*best)];
        return "  most even: " + radius(t) + ", tilt " + text(t.tilt_rad, Unit::radian) + ", " +
               text(t.evenness, Unit::fraction) + "; the picture bows by " +
               text(t.bow_m, Unit::millimetre) + " and loses " + text(t.crop, Unit::fraction) +
               " to the masking" + darkness(t) + "\n";
    }

private:
    std::string text(double si, Unit unit) const { return base::quantity_text(si, unit, system_); }
    std::string radius(const CurvatureTrial& t) const {
        return t.radius_m == 0.0 ? "flat" : "R " + text(t.radius_m, Unit::metre);
    }
    /// The trial keeps the lens that is in.
    std::string darkness(const CurvatureTrial& t) const {
        if (t.uncovered < 0.0005) return {};
        return "; it leaves " + text(t.uncovered, Unit::fraction) +
               " of the opening dark, which asks for a shorter lens or more zoom";
    }
    const std::string& seat(const CurvatureTrial& t) const {
        return study_.seats.seats.at(static_cast<std::size_t>(t.side_seat)).name;
    }
    Row row(const CurvatureTrial& t, bool is_best) const {
        const char* mark = is_best ? "most even" : (t.clear_of_wall ? "" : "in the wall");
        return {mark,
                radius(t),
                text(t.sagitta_fraction, Unit::fraction),
                text(t.tilt_rad, Unit::radian),
                text(t.evenness, Unit::fraction),
                text(t.side_ratio, Unit::fraction),
                seat(t),
                text(t.crop, Unit::fraction),
                text(t.uncovered, Unit::fraction),
                text(t.bow_m, Unit::millimetre),
                text(t.keystone_vertical, Unit::fraction)};
    }

    const study::Study& study_;
    base::UnitSystem system_;
};

}  // namespace

std::string curve_text(const study::Study& study,
                       int projector,
                       int format,
                       const light::CurvatureHelp& help,
                       base::UnitSystem system) {
    const room::Layout& layout = study.layout();
    const CurveWriter writer(study, system);
    return layout.name + ": the screen's curve and tilt, " +
           layout.projectors.at(static_cast<std::size_t>(projector)).name + " in " +
           layout.formats.at(static_cast<std::size_t>(format)).name + "\n\n" + writer.now(help) +
           "\nCurve, tilt as it is\n" + writer.table(help.curves, help.best_curve, 4) +
           writer.verdict(help.curves, help.best_curve) + "\nTilt, curve as it is\n" +
           writer.table(help.tilts, help.best_tilt, 4) +
           writer.verdict(help.tilts, help.best_tilt) + "\n" + kCautions;
}

}  // namespace rakeline::command
