// SPDX-License-Identifier: MIT
#include "report/table_cells.hpp"

namespace rakeline::report {

using study::Figure;

TableCell mark_cell(const Pages& pages, study::Verdict verdict) {
    if (verdict == study::Verdict::no_limit) return {};
    return {study::verdict_mark(verdict), verdict_colour(pages.theme(), verdict), true};
}

TableCell value_cell(const Pages& pages,
                     const ReportInput& in,
                     const Figure& figure,
                     double si,
                     study::Verdict verdict) {
    TableCell cell{base::quantity(si, figure.definition->unit, in.units()).number, {}, false};
    if (verdict == study::Verdict::missed || verdict == study::Verdict::near) {
        cell.colour = verdict_colour(pages.theme(), verdict);
        cell.medium = true;
    }
    return cell;
}

study::Verdict verdict_at(const Figure& figure, int index) {
    for (std::size_t i = 0; i < figure.values.size() && i < figure.verdicts.size(); ++i)
        if (figure.values[i].index == index) return figure.verdicts[i];
    return study::Verdict::no_limit;
}

std::string unit_of(const ReportInput& in, const Figure& figure, double si) {
    return base::quantity(si, figure.definition->unit, in.units()).unit;
}

bool same_definition(const Figures& figures, std::size_t i) {
    return i > 0 && figures[i]->definition == figures[i - 1]->definition;
}

}  // namespace rakeline::report
