// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

#include <string>
#include <vector>

/// Private to drawing/: a chart with axes, in drawing units.
namespace rakeline::drawing {

struct Scale {
    double low = 0.0;
    double high = 1.0;

    double share(double x) const { return (x - low) / (high - low); }
};

struct Tick {
    double at = 0.0;
    std::string text;
};

class Chart {
public:
    /// `pitch`: between lines of lettering.
    Chart(Drawing& drawing, geometry::Rectangle field, Scale x, Scale y, double pitch)
        : drawing_(drawing), field_(field), x_(x), y_(y), pitch_(pitch) {}

    const geometry::Rectangle& field() const { return field_; }
    double pitch() const { return pitch_; }
    glm::dvec2 place(double x, double y) const;

    /// The border, with a line across and its words at the left for each tick.
    void frame(const std::vector<Tick>& up);
    /// Helper lines up through the field, without words.
    void uprights(const std::vector<Tick>& across);
    /// Short strokes with words below the field; `row` 0 is the nearest. Words at an end of the
    /// axis run inward.
    void ticks_below(const std::vector<Tick>& across, int row);
    void title_below(const std::string& text, int row);

    void curve(const std::vector<glm::dvec2>& points, Ink ink, Weight weight, bool dashed);
    /// Upright through the field; its words above it in `row`, 0 the nearest.
    void mark(double x, const std::string& text, Ink ink, bool dashed, int row);
    /// Words inside the field along an upright dashed line.
    void mark_inside(double x, const std::string& text);
    void shade(double from, double to, Ink ink);
    /// Words above the field in `row`, from `share` of its width on.
    void words_above(double share, const std::string& text, Ink ink, int row);
    /// Between two curves over the same places, `low` and `high` point by point.
    void shade_between(const std::vector<glm::dvec2>& low,
                       const std::vector<glm::dvec2>& high,
                       Ink ink);
    /// A small square at each point.
    void points(const std::vector<glm::dvec2>& at, Ink ink);
    /// A level piece of a limit from x to x, its words above its left end.
    void limit(double from, double to, double y, const std::string& text, Ink ink);
    /// Words at the right of the field, each at the height of its value; kept apart where values
    /// lie near each other.
    void words_right(std::vector<Tick> at, Ink ink);

private:
    double inset(Anchor anchor) const;

    Drawing& drawing_;
    geometry::Rectangle field_;
    Scale x_, y_;
    double pitch_;
};

}  // namespace rakeline::drawing
