// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"

/// What can be done with the chosen loudspeaker in one step: aim it at the seats, or make it one of
/// a series.
namespace rakeline::desk {

/// The search for a better aim, kept while study and loudspeaker are the same. Needs a study.
const AimCache& aim_choice(const PanelInput& in, Workspace& workspace);

/// One edit that aims the chosen loudspeaker at the seats. Nothing while the study is behind the
/// layout, and where no aim is better.
std::optional<Edit> aim_edit(const PanelInput& in, Workspace& workspace);

/// Spread and aim before and after, or why there is nothing to do.
std::string aim_hint(const PanelInput& in, Workspace& workspace);

/// One loudspeaker of the series read, with the name of its series.
struct ListedLoudspeaker {
    const room::Loudspeaker* loudspeaker = nullptr;
    std::string series;
};
std::vector<ListedLoudspeaker> listed_loudspeakers(const Workspace& workspace);

/// The layout in which loudspeaker `which` is one of a series: it keeps its name, channel, place,
/// aim, delay and whether it stands behind the screen, and takes all else.
room::Layout with_series_loudspeaker(const room::Layout& layout,
                                     int which,
                                     const room::Loudspeaker& of_series);

}  // namespace rakeline::desk
