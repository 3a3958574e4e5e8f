// SPDX-License-Identifier: MIT
#pragma once

#include "desk/panel_input.hpp"
#include "desk/workspace.hpp"

/// Curves and tilts of the screen tried for what is chosen: whether they are those of the layout
/// that is open, and the edit that takes the most even one.
namespace rakeline::desk {

/// The newest trials are of the layout that is open, and of the chosen projector and format.
bool curves_current(const PanelInput& in, const Workspace& workspace);

enum class SurfacePart { curve, tilt };

/// The most even trial; null while the trials are not current, and where none will do.
const light::CurvatureTrial* most_even(const PanelInput& in,
                                       const Workspace& workspace,
                                       SurfacePart part);

/// What its button does, or why it does nothing.
std::string take_words(const PanelInput& in, const Workspace& workspace, SurfacePart part);

/// The layout with the most even trial's surface; nothing where there is none.
std::optional<Edit> take_surface(const PanelInput& in,
                                 const Workspace& workspace,
                                 SurfacePart part);

}  // namespace rakeline::desk
