// SPDX-License-Identifier: MIT
#include "drawing/seat_view.hpp"

/// The luminance of the picture in a seat's view.
namespace rakeline::drawing {
namespace {

constexpr double kLine = 0.07;  ///< of lettering, of the window's height

glm::dvec2 surface_place(const EyeView& view, glm::dvec2 halves) {
    const geometry::Rectangle& o = view.opening();
    return o.centre() + 0.5 * glm::dvec2(o.width(), o.height()) * halves;
}

}  // namespace

void add_eye_luminance(EyeView& view) {
    OpeningPage page;
    page.pitch_m = 0.7 * kLine * view.page.window().height();
    page.point = [&view](glm::dvec2 halves) {
        return view.page.point(geometry::point_at(view.surface(), surface_place(view, halves)));
    };
    page.line = [&view](const std::vector<glm::dvec2>& line) {
        std::vector<glm::dvec3> placed;
        for (const glm::dvec2& halves : line)
            placed.push_back(geometry::point_at(view.surface(), surface_place(view, halves)));
        return view.page.line(placed);
    };
    add_luminance(*view.luminance, page, view.choice.units, view.drawing);
}

void add_eye_scale(EyeView& view) {
    const geometry::Rectangle& w = view.page.window();
    const double height = kScaleLines * kLine * w.height();
    const double top = view.drawing.low.y;
    view.drawing.low.y -= height;
    add_luminance_scale(view.luminance->scale, {w.left, w.right, top - height, top},
                        view.choice.units, view.drawing);
}

}  // namespace rakeline::drawing
