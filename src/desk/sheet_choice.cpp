// SPDX-License-Identifier: MIT
#include "desk/sheet_choice.hpp"

namespace rakeline::desk {

bool sheets_current(const PanelInput& in, const Workspace& w) {
    if (!in.current || !in.sheets.answer) return false;
    const SheetQuestion& asked = in.sheets.answer->question;
    return same_brief(asked.study.get(), in.study) && asked.catalogue == w.sheets;
}

std::optional<Edit> hang_sheet(const PanelInput& in, const Workspace& w, std::size_t trial) {
    if (!sheets_current(in, w) || trial == 0) return std::nullopt;
    const auto& trials = in.sheets.answer->trials.trials;
    if (trial >= trials.size()) return std::nullopt;
    const room::SheetChoice& sheet = trials[trial].sheet;
    return Edit{"Hang sheet " + sheet.name, study::with_sheet(in.brief.layout, sheet), {}};
}

std::optional<Edit> turn_holes(const PanelInput& in, const Workspace& w) {
    if (!sheets_current(in, w)) return std::nullopt;
    const auto& turn = in.sheets.answer->trials.turn;
    if (!turn || !(turn->trials.at(turn->best).visibility < turn->now)) return std::nullopt;
    return Edit{"Turn the holes", study::with_turn(in.brief.layout, *turn), {}};
}

}  // namespace rakeline::desk
