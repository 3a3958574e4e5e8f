// SPDX-License-Identifier: MIT
#pragma once

#include "desk/theme.hpp"
#include "desk/workspace.hpp"
#include "drawing/drawing.hpp"

/// A drawing painted into the window: fitted to its field, zoomed by the wheel, moved by a drag.
namespace rakeline::desk {

/// The view that fits the drawing into the field, then zooms and shifts by `look`. A plan is turned
/// by a quarter where it then comes out larger.
DrawingView fitted_view(const drawing::Drawing& drawing,
                        ImVec2 low,
                        ImVec2 high,
                        const DrawingLook& look);

/// Paints everything; what `hovered` or `selected` shows stands out. Labels that would lie on an
/// earlier one are left out, those that speak of limits first.
struct PaintChoice {
    drawing::Shows hovered;
    drawing::Shows selected;
    base::UnitSystem units = base::UnitSystem::metric;
};
/// Returns how many labels were left out.
int paint_drawing(const Theme& theme,
                  ImDrawList& list,
                  const drawing::Drawing& drawing,
                  const DrawingView& view,
                  const PaintChoice& choice);

/// Pixels from one label to the next below it, so that both are shown.
float label_pitch(const Theme& theme);

/// "1 : 110", or "12 : 1" where it is larger than life, of the view on this display, from the usual
/// 96 pixels an inch.
std::string scale_text(const Theme& theme, const DrawingView& view);

}  // namespace rakeline::desk
