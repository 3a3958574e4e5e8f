// SPDX-License-Identifier: MIT
#pragma once

#include "report/chapters.hpp"
#include "report/table.hpp"

/// What the tables of figures share: cells of values and marks.
namespace rakeline::report {

using Figures = std::vector<const study::Figure*>;

/// The mark of a verdict in its colour; empty where no limit applies.
TableCell mark_cell(const Pages& pages, study::Verdict verdict);

/// A value in the colour of its verdict; calm where it holds.
TableCell value_cell(const Pages& pages,
                     const ReportInput& in,
                     const study::Figure& figure,
                     double si,
                     study::Verdict verdict);

/// Verdict of the value at `index`; no_limit where there is none.
study::Verdict verdict_at(const study::Figure& figure, int index);

/// Unit as printed beside the number; Hz turns into kHz by value.
std::string unit_of(const ReportInput& in, const study::Figure& figure, double si);

/// Whether figure i goes on with the definition of the one before it.
bool same_definition(const Figures& figures, std::size_t i);

}  // namespace rakeline::report
