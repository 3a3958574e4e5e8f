// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

namespace rakeline::drawing {

/// How one contour is drawn, and its number.
struct ContourLook {
    std::string text;
    Weight weight = Weight::seen;
    Ink ink = Ink::line;
    bool dashed = false;
    Shows shows{};
};

/// Puts contours on the page, each number in a gap of its line, where no other number stands.
class ContourPen {
public:
    /// `pitch_m`: about the height of a line of lettering, in the drawing's metres.
    ContourPen(double pitch_m, Drawing& drawing) : pitch_m_(pitch_m), drawing_(drawing) {}

    /// No number comes so near to these lines that it would stand on them.
    void keep_off(std::vector<std::vector<glm::dvec2>> lines) { kept_off_ = std::move(lines); }

    void draw(const std::vector<glm::dvec2>& line, const ContourLook& look);

private:
    struct Taken {
        glm::dvec2 at{0.0};
        double half_wide = 0.0;
    };
    bool taken(glm::dvec2 at, double half_wide) const;
    void stroke(const std::vector<glm::dvec2>& points, const ContourLook& look);
    void label(glm::dvec2 at, double half_wide, const ContourLook& look);

    double pitch_m_;
    Drawing& drawing_;
    std::vector<Taken> taken_;
    std::vector<std::vector<glm::dvec2>> kept_off_;
};

}  // namespace rakeline::drawing
