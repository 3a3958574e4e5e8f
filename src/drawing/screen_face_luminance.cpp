// SPDX-License-Identifier: MIT
#include "drawing/screen_face.hpp"

/// The luminance over the flat screen, as one seat sees it.
namespace rakeline::drawing {

void add_face_luminance(Face& face) {
    const geometry::Rectangle& o = face.chosen.opening->uv;
    const auto uv = [&o](glm::dvec2 halves) {
        return o.centre() + 0.5 * glm::dvec2(o.width(), o.height()) * halves;
    };
    OpeningPage page;
    page.pitch_m = 0.65 * face.pitch_m;
    page.point = [&uv](glm::dvec2 halves) { return std::optional(uv(halves)); };
    page.line = [&uv](const std::vector<glm::dvec2>& line) {
        std::vector<glm::dvec2> out;
        for (const glm::dvec2& halves : line)
            out.push_back(uv(halves));
        return std::vector<std::vector<glm::dvec2>>(1, out);
    };
    add_luminance(*face.luminance, page, face.choice.units, face.drawing);
}

}  // namespace rakeline::drawing
