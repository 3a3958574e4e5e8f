// SPDX-License-Identifier: MIT
#pragma once

#include "base/result.hpp"
#include "report/theme.hpp"

#include <cairo.h>

#include <memory>
#include <string>

/// Text through Pango with typefaces of our own choice: Inter, with DejaVu Sans for the signs that
/// it lacks. The font set is private, so a page looks the same whatever else is installed.
namespace rakeline::report {

enum class Strength { regular, medium, semibold };

struct TextStyle {
    double size_pt = 8.0;
    Strength strength = Strength::regular;
    Rgb colour{};
    drawing::Anchor anchor = drawing::Anchor::left;
    double wrap_pt = 0.0;   ///< width to break lines at; 0: one line
    bool ellipsis = false;  ///< one line, cut with an ellipsis at wrap_pt
    double leading = 1.0;   ///< line spacing over the typeface's own
};

struct TextSize {
    double width = 0.0;
    double height = 0.0;
    double baseline = 0.0;  ///< of the first line, from the top
};

class Lettering {
public:
    /// Opens the font files; a Problem names the Debian package that brings a missing one.
    static base::Result<Lettering> open();

    /// Size that `text` takes, in points.
    TextSize measured(const std::string& text, const TextStyle& style) const;

    /// Draws with the anchor side of the text's box at x and its top at y; returns the size.
    TextSize draw(
        cairo_t* to, double x, double y, const std::string& text, const TextStyle& style) const;

    /// Characters drawn so far that no font of ours has: 0 in a sound document.
    int unknown_glyphs() const;

private:
    struct Fonts;
    explicit Lettering(std::shared_ptr<Fonts> fonts) : fonts_(std::move(fonts)) {}
    std::shared_ptr<Fonts> fonts_;
};

}  // namespace rakeline::report
