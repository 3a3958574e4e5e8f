// SPDX-License-Identifier: MIT
#pragma once

#include "base/quantity_text.hpp"
#include "desk/theme.hpp"
#include "study/study.hpp"

#include <string>

/// A number is never naked: name, value, unit and mark in a row; definition, limit and source on
/// hover; the derivation on a click.
namespace rakeline::desk {

struct FigureRowWords {
    std::string label;
    std::string note;  ///< second line, quiet: "at N20 · 12.1 A1 to 38.2 N20"; empty for none
};

/// Draws the row and returns whether it was clicked.
bool figure_row(const Theme& theme,
                const study::Study& study,
                const study::Figure& figure,
                double si,
                study::Verdict verdict,
                base::UnitSystem units,
                const FigureRowWords& words);

/// The row of a figure whose values are yet to come, as high as it will be then.
void awaited_row(const Theme& theme, const study::FigureDefinition& definition, const char* words);

/// What a tooltip says of a figure: meaning, limits, source.
void figure_tooltip(const Theme& theme,
                    const study::Study& study,
                    const study::Figure& figure,
                    study::Verdict verdict,
                    base::UnitSystem units);

}  // namespace rakeline::desk
