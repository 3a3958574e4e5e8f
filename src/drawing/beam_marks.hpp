// SPDX-License-Identifier: MIT
#pragma once

#include "drawing/parts.hpp"

/// Where the chosen beam comes nearest to what it must not touch, by the study's own figures.
namespace rakeline::drawing {

enum class BeamNear { floor, balcony, ceiling, wall };

struct BeamMark {
    BeamNear to = BeamNear::floor;
    glm::dvec3 part{0.0};   ///< on the floor, balcony, ceiling or wall
    glm::dvec3 beam{0.0};   ///< on the beam's side
    double distance_m = 0;  ///< negative: the part reaches that far into the beam
    study::Verdict verdict = study::Verdict::no_limit;
    std::optional<int> block;  ///< floor: the seating block that it carries
    std::string text;          ///< "beam 1.98 m over the floor ✗"
};

/// Floor and balcony always, ceiling and wall where a limit is near or missed. The floor's verdict
/// is the worse of that over the floor and that over standing heads.
std::vector<BeamMark> beam_marks(const study::Study& study,
                                 const Chosen& chosen,
                                 base::UnitSystem units);

/// Upright distances, with a standing person where the beam is lowest over the floor.
void add_section_beam_marks(const study::Study& study,
                            const DrawingChoice& choice,
                            const Chosen& chosen,
                            Drawing& drawing);

/// The places from above, of the level that the plan is of if it is of one; in words only those
/// that are near a limit or miss it, since words over seats hide them.
void add_plan_beam_marks(const study::Study& study,
                         const DrawingChoice& choice,
                         const Chosen& chosen,
                         Drawing& drawing);

/// The opening that the chosen projector needs, against the wall that the section (up) or the plan
/// (across) cuts, in the ink of the port's margin in the chosen format.
void add_section_port_needed(const study::Study& study, const Chosen& chosen, Drawing& drawing);
void add_plan_port_needed(const study::Study& study, const Chosen& chosen, Drawing& drawing);

/// The verdict of a figure of the chosen pair; no_limit where it has none.
study::Verdict verdict_of(const study::Study& study, const Chosen& chosen, const char* id);

}  // namespace rakeline::drawing
