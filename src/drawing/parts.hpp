// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/drawing.hpp"

/// What plan and section share: the choice made whole, verdicts as ink, small shapes, bounds.
namespace rakeline::drawing {

/// The choice with unset projector and format filled by the first of the layout; -1 where the
/// layout has none.
struct Chosen {
    int projector = -1;
    int format = -1;
    const picture::Opening* opening = nullptr;           ///< of the format
    const picture::ProjectedPicture* picture = nullptr;  ///< null where the pair gives none
};
Chosen chosen(const study::Study& study, const DrawingChoice& choice);

Ink verdict_ink(study::Verdict verdict);

/// Verdict of every seat or row, by index, of a figure along that axis; no_limit where undefined.
std::vector<study::Verdict> verdicts_by_index(const study::Figure* figure, std::size_t count);

inline Shows showing(Shows::Kind kind, int index = 0) {
    return {kind, index};
}

/// A two-point line.
Line stroke(glm::dvec2 from, glm::dvec2 to, Weight weight, Ink ink, Shows what = {});

/// Regular polygon that stands for a circle.
std::vector<glm::dvec2> disc(glm::dvec2 centre, double radius_m, int corners = 16);

/// Rectangle about a centre, turned so that `along` (unit) is its long way.
std::vector<glm::dvec2> box(glm::dvec2 centre,
                            glm::dvec2 along,
                            double half_along_m,
                            double half_across_m);

/// Surface points (u, v) along one line through the gate, `from` to `to` in gate halves (-1 ... +1
/// of width and height); points that miss the surface are left out.
std::vector<glm::dvec2> surface_line(const picture::ProjectedPicture& picture,
                                     glm::dvec2 from,
                                     glm::dvec2 to);

/// The same in the room.
std::vector<glm::dvec3> picture_line(const picture::ProjectedPicture& picture,
                                     glm::dvec2 from,
                                     glm::dvec2 to);

/// Whether a row, or a piece of floor, belongs to a raised block.
bool is_raised(const study::Study& study, int row);
bool is_raised(const study::Study& study, const room::Platform& platform);

/// Sets low and high from all items, with a margin for lettering.
void set_bounds(Drawing& drawing, double margin_m);

}  // namespace rakeline::drawing
