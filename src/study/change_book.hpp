// SPDX-License-Identifier: MIT
#pragma once

#include "study/format_change.hpp"

/// The change sheets and lists of moves that one print, text or JSON output holds.
namespace rakeline::study {

/// The moves from one format of a machine to another.
struct ListedMoves {
    int projector = 0;
    int from = 0;
    int to = 0;
    std::vector<Move> moves;
};

struct ChangeBook {
    std::vector<ChangeSheet> sheets;
    std::vector<ListedMoves> lists;
    std::optional<MachineChange> machines;
};

/// What to put in; what is unset stands for all.
struct ChangeWanted {
    std::optional<int> projector;
    std::optional<int> from;
    std::optional<int> to;
};

/// Sheets of the projectors wanted, and for each the moves between every two of its formats, both
/// ways, that have the format wanted at that end. A pair and its way back stand together.
ChangeBook change_book(const Study& study, const ChangeWanted& wanted = {});

/// One object: `room`; `sheets`, one a projector: {projector, formats, rows, notes}, rows a list of
/// {part: "set" | "gives", label, cells}, parallel to formats, a cell null or {sources, text,
/// value?, unit?, verdict?}; `changes`, a list of {projector, from, to, moves}, moves in order, a
/// list of {kind, text, from?, to?, by?, unit?, caution?}; and `machines` where two were compared:
/// {format, from, to, rows}, sides {projector, proposed?, proposal?, lens}, rows {label, from, to,
/// difference?, unit?}. Values SI, angles in degrees.
std::string change_json(const Study& study, const ChangeBook& book);

}  // namespace rakeline::study
