// SPDX-License-Identifier: MIT
#pragma once

#include "study/sheet_cells.hpp"

/// Private to study/: the single steps of a format change, each put behind those in `out` if it is
/// needed. format_change.hpp says in which order, and why.
namespace rakeline::study {

/// The same machine in both formats.
struct ChangeEnds {
    SheetPlace from;
    SheetPlace to;
};

using Moves = std::vector<Move>;

void add_masks(const ChangeEnds& ends, MoveKind kind, Moves& out);  ///< open_mask or close_mask
void add_plate(const ChangeEnds& ends, Moves& out);
void add_pixels(const ChangeEnds& ends, Moves& out);
void add_lens(const ChangeEnds& ends, Moves& out);
void add_attachment(const ChangeEnds& ends, Moves& out);
void add_zoom(const ChangeEnds& ends, Moves& out);
void add_shift(const ChangeEnds& ends, Moves& out);
void add_aim(const ChangeEnds& ends, Moves& out);
void add_focus(const ChangeEnds& ends, Moves& out);
void add_light(const ChangeEnds& ends, Moves& out);
Move darken();
Move uncover();
Move check(const SheetPlace& to);

}  // namespace rakeline::study
