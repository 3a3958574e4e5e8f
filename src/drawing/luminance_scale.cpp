// SPDX-License-Identifier: MIT
#include "drawing/luminance_shading.hpp"
#include "drawing/parts.hpp"

#include <algorithm>
#include <cmath>

/// The scale beside a map of luminance.
namespace rakeline::drawing {
namespace {

using base::UnitSystem;

/// Where the parts of the scale stand, in lines of lettering from the box's upper edge.
constexpr double kAbove = 0.55;  ///< middle of the numbers above the bar
constexpr double kBarTop = 1.05;
constexpr double kBarFoot = 1.75;
constexpr double kBelow = 2.25;  ///< middle of the numbers below it
constexpr double kWords = 3.55;

class ScalePen {
public:
    ScalePen(const study::LuminanceScale& scale, const geometry::Rectangle& box, Drawing& drawing)
        : scale_(scale),
          box_(box),
          line_(box.height() / kScaleLines),
          left_(box.left + 1.2 * line_),
          right_(box.right - 4.2 * line_),
          drawing_(drawing) {}

    void bar() {
        constexpr int kSteps = 64;
        Shading shading;
        for (int i = 0; i <= kSteps; ++i) {
            const double share = static_cast<double>(i) / kSteps;
            const double x = std::lerp(left_, right_, share);
            shading.points.insert(shading.points.end(), {{x, y(kBarFoot)}, {x, y(kBarTop)}});
            shading.places.insert(shading.places.end(), {share, share});
            const int at = 2 * i;
            if (i < kSteps)
                shading.triangles.insert(shading.triangles.end(),
                                         {{at, at + 2, at + 3}, {at, at + 3, at + 1}});
        }
        drawing_.items.emplace_back(std::move(shading));
    }

    /// Ticks and numbers of one unit, on its side of the bar; those of the unit in use run across.
    void numbers(UnitSystem system, bool across) {
        const bool above = system == UnitSystem::metric;
        const double edge = above ? kBarTop : kBarFoot;
        const double tick = above ? edge - 0.18 : edge + 0.18;
        const auto levels = luminance_levels(scale_, system);
        const std::size_t stride = levels.size() > 7 ? 2 : 1;
        for (std::size_t i = 0; i < levels.size(); ++i) {
            const double place = palette_place(scale_, levels[i].cdm2);
            const double x = std::lerp(left_, right_, place);
            add({x, y(edge)}, {x, y(tick)}, Weight::helper, Ink::line);
            const bool inside = place > 1e-6 && place < 1.0 - 1e-6;
            if (across && inside)
                add({x, y(kBarTop)}, {x, y(kBarFoot)}, Weight::helper, ink_over(place));
            if (i % stride == 0)
                label({x, y(above ? kAbove : kBelow)}, levels[i].text, Anchor::centre, Ink::line);
        }
        label({right_ + 1.0 * line_, y(above ? kAbove : kBelow)},
              base::shown_scale(base::Unit::cd_per_m2, system).unit, Anchor::left,
              across ? Ink::line : Ink::quiet);
    }

    /// A bracket under the part of the bar that the limits allow, and what it is.
    void window(UnitSystem units) {
        const auto& least = scale_.window_least_cdm2;
        const auto& most = scale_.window_most_cdm2;
        if (!least && !most) return;
        const double from = least ? x_of(*least) : left_, to = most ? x_of(*most) : right_;
        const double level = kBarFoot - 0.06;
        add({from, y(level)}, {to, y(level)}, Weight::cut, Ink::holds);
        for (const double x : {from, to})
            add({x, y(kBarTop - 0.12)}, {x, y(kBarFoot + 0.12)}, Weight::cut, Ink::holds);
        const base::Unit unit = base::Unit::cd_per_m2;
        const auto text = [&](double cdm2) { return base::quantity_text(cdm2, unit, units); };
        const std::string range =
            least && most ? base::quantity(*least, unit, units).number + " to " + text(*most)
            : least       ? text(*least) + " or more"
                          : text(*most) + " or less";
        label({left_, y(kWords)}, "bracket: reference limit, " + range, Anchor::left, Ink::quiet);
    }

private:
    double y(double lines) const { return box_.top - lines * line_; }
    double x_of(double cdm2) const { return std::lerp(left_, right_, palette_place(scale_, cdm2)); }
    void add(glm::dvec2 from, glm::dvec2 to, Weight weight, Ink ink) {
        drawing_.items.emplace_back(stroke(from, to, weight, ink));
    }
    void label(glm::dvec2 at, const std::string& text, Anchor anchor, Ink ink) {
        drawing_.items.emplace_back(Label{.at = at, .text = text, .anchor = anchor, .ink = ink});
    }

    const study::LuminanceScale& scale_;
    const geometry::Rectangle& box_;
    double line_, left_, right_;
    Drawing& drawing_;
};

}  // namespace

void add_luminance_scale(const study::LuminanceScale& scale,
                         const geometry::Rectangle& box,
                         UnitSystem units,
                         Drawing& drawing) {
    ScalePen pen(scale, box, drawing);
    pen.bar();
    for (const UnitSystem system : {UnitSystem::metric, UnitSystem::imperial})
        pen.numbers(system, system == units);
    pen.window(units);
}

Drawing luminance_scale_drawing(const study::LuminanceScale& scale,
                                double width_lines,
                                UnitSystem units) {
    Drawing drawing;
    drawing.high = {width_lines, kScaleLines};
    add_luminance_scale(scale, {0.0, width_lines, 0.0, kScaleLines}, units, drawing);
    return drawing;
}

}  // namespace rakeline::drawing
