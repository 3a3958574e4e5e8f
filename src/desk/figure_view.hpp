// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"
#include "study/study.hpp"

#include <string>
#include <vector>

/// Figures made ready to show: which of them a panel lists, and what stands in their rows.
namespace rakeline::desk {

/// One value picked out of a figure that has many.
struct Extreme {
    int index = 0;
    double si = 0.0;
    study::Verdict verdict = study::Verdict::no_limit;
};

/// The least, the greatest, and the one that most deserves a look: the worst mark, and among
/// equals the one nearest the bound that its limit sets (the greatest where there is no limit).
struct Extent {
    Extreme least, greatest, worst;
};
std::optional<Extent> extent(const study::Study& study, const study::Figure& figure);

study::Place chosen_place(const Workspace& workspace);

struct FigureGroup {
    std::string title;  ///< "EVERY SEAT · 2.39"
    std::vector<const study::Figure*> figures;
    std::vector<const study::FigureDefinition*> awaited;  ///< come when the crowd is drawn
};

/// The open subject's figures for the chosen projector, format, loudspeaker and band.
std::vector<FigureGroup> figure_groups(const study::Study& study, const Workspace& workspace);

/// What stands in place of an awaited figure: "being sampled", or that it is not.
const char* awaited_words(const PanelInput& in);

/// Per-seat figures that can colour the seats, for the chosen place.
std::vector<const study::Figure*> seat_figures(const study::Study& study,
                                               const Workspace& workspace);

/// The one that does: the user's choice, or the open subject's with the worst mark, or where that
/// has none any subject's. Null for plain seats.
const study::Figure* colouring_figure(const study::Study& study, const Workspace& workspace);

/// "limit 5 % at most · common practice, no source", or empty.
std::string limit_text(const room::Limit& limit, base::Unit unit, base::UnitSystem units);

/// How many of the figures with a limit hold it (or are near it), over the whole study.
struct LimitCount {
    int hold = 0;
    int all = 0;
};
LimitCount count_limits(const study::Study& study);

/// Indices of the study's findings in the order of their cards: the missed before the near, among
/// equals those of the open subject first, else as the study has them.
std::vector<std::size_t> finding_order(const study::Study& study, study::Subject open);

/// Keeps the choices within what the study has.
void clamp_choices(Workspace& workspace, const study::Study& study);

/// "seat F11", "row F", "projector Film", ...; empty for nothing.
std::string name_of(const study::Study& study, const drawing::Shows& shows);

}  // namespace rakeline::desk
