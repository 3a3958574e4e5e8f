// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// Meter readings typed in for the chosen projector and format, fitted and made ready to show, and
/// the edit that adopts the fit.
namespace rakeline::desk {

/// The fit of what is typed in; worked out anew only when the study, the choice, the readings or
/// the units have changed. Needs a study. Readings of another room are let go of.
const MeterCache& meter_fit(const PanelInput& in, Workspace& workspace);

/// The layout with the fit in its projector, as one edit; nothing, and why in `refused`, where the
/// layout can't hold it.
std::optional<Edit> adopt_meter(const PanelInput& in, MeterCache& cache);

}  // namespace rakeline::desk
