// SPDX-License-Identifier: MIT
#include "command/lens_text.hpp"

#include "base/number_text.hpp"
#include "command/text_table.hpp"
#include "picture/lens_words.hpp"
#include "study/figure.hpp"

#include <vector>

namespace rakeline::command {
namespace {

using base::Unit;
using picture::LensChoice;
using Row = std::vector<std::string>;

class LensWriter {
public:
    LensWriter(const picture::LensPick& pick,
               std::span<const study::ListedLens> catalogue,
               base::UnitSystem system)
        : pick_(pick), catalogue_(catalogue), system_(system) {}

    std::string table() const {
        std::vector<Row> rows{heads()};
        std::vector<std::string> below{""};
        for (const LensChoice& choice : pick_.choices) {
            rows.push_back(row(choice, rows.size()));
            below.push_back(picture::lens_faults(choice, system_));
        }
        constexpr std::size_t kNames = 3;  // rank, mark and name come first
        const std::vector<std::string> lines = table_lines(rows, kNames);
        std::string out;
        for (std::size_t r = 0; r < lines.size(); ++r) {
            out += lines[r] + "\n";
            if (!below[r].empty()) out += "          " + below[r] + "\n";
        }
        return out;
    }

    std::string wish() const {
        const picture::LensWish& w = *pick_.wish;
        const std::string cover = w.covering_focal_length_m
                                      ? text(*w.covering_focal_length_m, Unit::millimetre, 1)
                                      : "none";
        return "  throw " + text(w.demand.throw_m, Unit::metre) + ", focal length for the width " +
               text(w.focal_length_m, Unit::millimetre, 1) + ", to cover " + cover +
               ", image circle " + text(w.demand.image_circle_m, Unit::millimetre) +
               "\n  shift up " + text(w.demand.shift_up, Unit::fraction) +
               " of the gate's height, to the right " +
               text(w.demand.shift_across, Unit::fraction) + " of its width\n";
    }

private:
    std::string text(double si, Unit unit, int extra = 0) const {
        return base::quantity_text(si, unit, system_, extra);
    }
    std::string number(double si, Unit unit) const {
        return base::quantity(si, unit, system_).number;
    }
    std::string unit(Unit unit) const { return base::quantity(0.0, unit, system_).unit; }

    Row heads() const {
        const std::string mm = unit(Unit::millimetre);
        return {"",
                "",
                "Lens",
                "Set to " + mm,
                "Width " + unit(Unit::metre),
                "Least over " + mm,
                "of width %",
                "Light lost %",
                "Dark %",
                "Throw ratio",
                "Shift lost %",
                "Circle spare " + mm,
                "Port spare " + mm};
    }

    /// Least overfill as a length, and over the opening's side that it is square to.
    void put_overfill(const LensChoice& c, Row& row) const {
        if (!c.picture || !c.picture->overfill || !c.picture_width_m) {
            row.insert(row.end(), {"-", "-"});
            return;
        }
        const double least = c.picture->overfill->least_m();
        row.push_back(number(least, Unit::millimetre));
        row.push_back(number(least / *c.picture_width_m, Unit::fraction));
    }

    std::string throw_ratios(const LensChoice& c) const {
        if (!c.reach.throw_ratio_short || !c.reach.throw_ratio_long) return "-";
        const std::string from = base::fixed_text(*c.reach.throw_ratio_short, 2);
        if (*c.reach.throw_ratio_long == *c.reach.throw_ratio_short) return from;
        return from + " to " + base::fixed_text(*c.reach.throw_ratio_long, 2);
    }

    Row row(const LensChoice& c, std::size_t rank) const {
        const auto& listed = catalogue_[static_cast<std::size_t>(c.lens)];
        const bool good = c.covers() && c.fits();
        Row out{std::to_string(rank),
                study::verdict_mark(good ? study::Verdict::holds : study::Verdict::missed),
                listed.lens.name + " (" + listed.list + ")",
                number(c.focal_length_m, Unit::millimetre),
                c.picture_width_m ? number(*c.picture_width_m, Unit::metre) : "-"};
        put_overfill(c, out);
        out.push_back(c.picture ? number(c.picture->crop, Unit::fraction) : "-");
        out.push_back(c.picture ? number(c.picture->uncovered, Unit::fraction) : "-");
        out.push_back(throw_ratios(c));
        out.push_back(number(c.reach.field_lost, Unit::fraction));
        out.push_back(number(c.reach.image_circle_spare_m, Unit::millimetre));
        out.push_back(c.picture && c.picture->port_margin_m
                          ? number(*c.picture->port_margin_m, Unit::millimetre)
                          : "-");
        return out;
    }

    const picture::LensPick& pick_;
    std::span<const study::ListedLens> catalogue_;
    base::UnitSystem system_;
};

}  // namespace

std::string lens_text(const room::Layout& layout,
                      const picture::LensPick& pick,
                      std::span<const study::ListedLens> catalogue,
                      base::UnitSystem system) {
    std::vector<room::Lens> lenses;
    for (const study::ListedLens& listed : catalogue)
        lenses.push_back(listed.lens);
    std::string out = layout.projectors.at(static_cast<std::size_t>(pick.projector)).name + ", " +
                      layout.formats.at(static_cast<std::size_t>(pick.format)).name + "\n";
    const LensWriter writer(pick, catalogue, system);
    if (pick.wish) {
        out += writer.wish();
        if (!pick.choices.empty()) out += "\n" + writer.table() + "\n";
    }
    out += "  " + picture::lens_reason(pick, lenses, system) + "\n";
    return out + "  " + picture::lens_needed(pick, system) + "\n";
}

}  // namespace rakeline::command
