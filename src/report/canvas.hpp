// SPDX-License-Identifier: MIT
#pragma once

#include "report/lettering.hpp"

namespace rakeline::report {

/// A rectangle on a page or picture, points, y downward.
struct Box {
    double x = 0.0, y = 0.0, width = 0.0, height = 0.0;

    double right() const { return x + width; }
    double bottom() const { return y + height; }
};

/// How a drawing lies on a page.
struct Placement {
    Box box;                    ///< the drawing's bounds are centred in it
    double points_per_m = 0.0;  ///< 72 / 0.0254 / n for a scale of 1 : n
};

/// Points per metre at a scale of 1 : n.
double points_per_metre(double scale_denominator);

/// The placement that shows the whole drawing as large as the box allows.
Placement fitted(const drawing::Drawing& drawing, const Box& box);

/// Paints drawings with line weights of 1.8 (cut), 1.0 (seen) and 0.5 pt (helper).
class Canvas {
public:
    Canvas(cairo_t* to, const Lettering& lettering, const Theme& theme, base::UnitSystem units)
        : to_(to), lettering_(lettering), theme_(theme), units_(units) {}

    void paint(const drawing::Drawing& drawing, const Placement& placement);

    static constexpr double kLettering_pt = 6.8;

private:
    glm::dvec2 at(glm::dvec2 p) const;
    void trace(const std::vector<glm::dvec2>& points, bool closed);
    void set_ink(const Rgb& rgb, double strength = 1.0);
    void stroke(double weight_pt, bool dashed = false);

    void paint_item(const drawing::Line& line);
    void paint_item(const drawing::Fill& fill);
    void paint_item(const drawing::Shading& shading);
    void paint_item(const drawing::Label& label);
    void paint_item(const drawing::Dimension& dimension);
    void extension(glm::dvec2 from, glm::dvec2 to);
    void tick(glm::dvec2 at, glm::dvec2 along);
    void dimension_text(glm::dvec2 a, glm::dvec2 b, const std::string& text);
    void text_on_ground(double x, double y, const std::string& text, const TextStyle& style);

    cairo_t* to_;
    const Lettering& lettering_;
    const Theme& theme_;
    base::UnitSystem units_;
    double points_per_m_ = 1.0;
    glm::dvec2 origin_{0.0};  ///< of the drawing's coordinates on the page
    double up_ = -1.0;        ///< direction of the second coordinate on the page
};

}  // namespace rakeline::report
