// SPDX-License-Identifier: MIT
#pragma once

#include "study/format_change.hpp"
#include "study/use_fields.hpp"

#include <string_view>

/// Private to study/: cells of a change sheet from figures and members of the layout.
namespace rakeline::study {

/// A machine and a format, and the members of the use that joins them.
struct SheetPlace {
    const Study& study;
    int projector = 0;
    int format = 0;
    UseFields fields;

    const room::Projector& machine() const {
        return study.layout().projectors.at(static_cast<std::size_t>(projector));
    }
};

/// Nothing if the projector has no use for the format.
std::optional<SheetPlace> sheet_place(const Study& study, int projector, int format);

/// The one value of a figure there; empty where it has none. Lengths in the gate (plate, shift) are
/// shown a digit finer than others: a tenth of a millimetre there is centimetres on the screen.
SheetCell figure_cell(const SheetPlace& place, std::string_view id);

/// A member of the use, by its key; empty where it is left open. Gates a digit finer, too.
SheetCell field_cell(const SheetPlace& place, const std::string& key);

/// "20.96 × 15.29 mm"; empty unless both have a value.
SheetCell pair_cell(const SheetCell& wide, const SheetCell& high);

/// The lens by its name, or that none is chosen.
SheetCell lens_cell(const SheetPlace& place);

/// "out", or "in, 2×".
SheetCell attachment_cell(const SheetPlace& place);

/// Film: the aperture, and the opening to file where there is one.
SheetCell aperture_cell(const SheetPlace& place);
SheetCell filed_cell(const SheetPlace& place);

/// The part of the imager in use, "1998 × 1080".
SheetCell pixels_cell(const SheetPlace& place);

/// The edge by which the picture reaches least past the opening: "11.5 mm, left".
SheetCell least_overfill_cell(const SheetPlace& place);

/// Whether a person has nothing to set between them: both read the same, or differ by less than
/// half of the last digit shown. Metric digits decide, so that both unit systems ask for the same.
bool read_alike(const SheetCell& a, const SheetCell& b);

}  // namespace rakeline::study
