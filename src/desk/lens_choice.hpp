// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// The lenses ranked for the chosen projector and format, made ready to show, and the edit that
/// fits one.
namespace rakeline::desk {

/// The pick for what is chosen; worked out anew only when the study, the choice, the series or the
/// units have changed. Needs a study.
const LensPickCache& lens_pick(const PanelInput& in, Workspace& workspace);

/// The layout with a lens fitted to one projector's use of a format, the zoom set to
/// `focal_length_m` (a prime has no setting). A lens that the layout lacks is added to its lenses,
/// under a free name where its own is taken. Nothing if the projector has no use for the format.
std::optional<room::Layout> with_lens(const room::Layout& layout,
                                      int projector,
                                      int format,
                                      const room::Lens& lens,
                                      double focal_length_m);

/// Name of the lens that the use has now; empty for none.
std::string fitted_lens(const room::Layout& layout, int projector, int format);

}  // namespace rakeline::desk
