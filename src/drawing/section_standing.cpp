// SPDX-License-Identifier: MIT
#include "drawing/section_standing.hpp"

namespace rakeline::drawing {

void add_section_standing(const study::Study& study, Drawing& drawing) {
    const room::Audience& audience = study.layout().audience;
    const double eye_m = audience.standing_height_m - audience.eye_to_crown_m;
    for (const room::CrossAisleLine& aisle : study::cross_aisles(study)) {
        const glm::dvec2 floor{aisle.middle.z, aisle.middle.y};
        const glm::dvec2 eye = floor + glm::dvec2(0.0, eye_m);
        const glm::dvec2 chin = eye - glm::dvec2(0.0, audience.eye_to_crown_m);
        const Item body = stroke(floor, chin, Weight::seen, Ink::quiet);
        const Item head =
            Line{.points = disc(eye, audience.eye_to_crown_m), .ink = Ink::quiet, .closed = true};
        drawing.items.push_back(body);
        drawing.items.push_back(head);
    }
}

}  // namespace rakeline::drawing
