// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"
#include "drawing/palette.hpp"
#include "study/figure.hpp"

#include <imgui.h>

/// Colours, type and space of the window. All sizes in code are given for a scale of 1 and pass
/// through px(), so that nothing is clipped or blurred on a display of another density.
namespace rakeline::desk {

struct Palette {
    ImVec4 ground, panel, raised, line;
    ImVec4 text, quiet;
    ImVec4 lamp;     ///< selected, or near a limit
    ImVec4 holds;    ///< within its limit
    ImVec4 missed;   ///< outside its limit
    ImVec4 beam;     ///< light of the projectors in drawings
    ImVec4 on_lamp;  ///< text on a lamp-coloured field
};

Palette dark_palette();
Palette paper_palette();

/// For numbers that belong to an older state of the room: no mark has a colour of its own.
Palette following_palette(const Palette& palette);

/// Inter in the sizes and weights that the window uses; signs come from DejaVu Sans. The figures
/// fonts have digits of one width.
struct Fonts {
    ImFont* small = nullptr;          ///< 13, labels and notes
    ImFont* body = nullptr;           ///< 16
    ImFont* figures = nullptr;        ///< 16 Medium, tabular
    ImFont* small_figures = nullptr;  ///< 13 Medium, tabular
    ImFont* title = nullptr;          ///< 21 SemiBold
};

struct Theme {
    Palette colour;
    Fonts font;
    float scale = 1.0f;
    bool paper = false;

    float px(float at_scale_one) const;
};

/// Fonts at `raster_scale` into the current context's atlas (cleared first). Falls back to
/// DejaVu Sans, then to the toolkit's own face, where Inter is not installed.
Fonts build_fonts(float raster_scale);

/// Sets the toolkit's style to the theme.
void apply_theme(const Theme& theme);

ImU32 packed(const ImVec4& colour, float strength = 1.0f);

const ImVec4& verdict_colour(const Palette& palette, study::Verdict verdict);

ImVec4 ink_colour(const Palette& palette, drawing::Ink ink);
ImVec4 of_rgb(const drawing::Rgb& rgb);

}  // namespace rakeline::desk
