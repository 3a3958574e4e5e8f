// SPDX-License-Identifier: MIT
#include "room/check_internal.hpp"
#include "room/field_fault.hpp"
#include "room/screen_extent.hpp"
#include "room/seat_plan.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {
namespace {

/// How far the loudspeaker stands on the seats' side of the sheet, m; beside the frame, of the
/// sheet's side edge. Negative behind it.
double before_sheet(const Screen& screen, const Loudspeaker& speaker) {
    const geometry::Patch patch = frame_patch(screen);
    const glm::dvec3 from_centre =
        glm::dvec3{speaker.across_m, speaker.up_m, speaker.back_m} - patch.centre;
    const double across = std::min(std::abs(from_centre.x), 0.5 * screen.width_m);
    const double r = patch.radius_m;
    const double sag = patch.flat() ? 0.0 : r - std::sqrt(std::max(0.0, r * r - across * across));
    return glm::dot(from_centre, patch.normal) - sag;
}

void check_within_hall(const Hall& hall, const Loudspeaker& speaker, std::size_t i, Findings& out) {
    if (speaker.back_m > hall.length_m) {
        out.add(at("loudspeakers", i, "back_m"),
                metres(speaker.back_m) + " is beyond the booth wall at " + metres(hall.length_m),
                "move it into the hall");
        return;
    }
    const double half_m = half_width_at(hall, speaker.back_m);
    if (std::abs(speaker.across_m) > half_m) {
        out.add(at("loudspeakers", i, "across_m"),
                metres(speaker.across_m) + " is outside the side walls, which stand " +
                    metres(half_m) + " from the centre line there",
                "move it into the hall");
    }
    if (speaker.up_m > hall.height_m) {
        out.add(at("loudspeakers", i, "up_m"),
                metres(speaker.up_m) + " is above the ceiling at " + metres(hall.height_m),
                "move it into the hall");
    }
}

}  // namespace

void check_loudspeakers(const Layout& layout, Findings& out) {
    check_names("loudspeakers", layout.loudspeakers, out);
    for (std::size_t i = 0; i < layout.loudspeakers.size(); ++i) {
        const Loudspeaker& speaker = layout.loudspeakers[i];
        check_within_hall(layout.hall, speaker, i, out);
        const double before_m = before_sheet(layout.screen, speaker);
        if (!speaker.behind_screen || before_m < 0.0) continue;
        out.add(at("loudspeakers", i, "behind_screen"),
                quoted(speaker.name) + " stands " + metres(before_m) + " in front of the sheet",
                "write false, or move it behind the sheet");
    }
}

}  // namespace rakeline::room
