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

}  // namespace

void check_loudspeaker(const Loudspeaker& speaker, const std::string& path, Findings& out) {
    check_rising(path + ".coverage_table", speaker.coverage_table, out);
}

void check_loudspeakers(const Layout& layout, Findings& out) {
    check_names("loudspeakers", layout.loudspeakers, out);
    for (std::size_t i = 0; i < layout.loudspeakers.size(); ++i) {
        const Loudspeaker& speaker = layout.loudspeakers[i];
        check_within_hall(layout.hall, {speaker.across_m, speaker.up_m, speaker.back_m},
                          at("loudspeakers", i), out);
        check_loudspeaker(speaker, at("loudspeakers", i), out);
        const double before_m = before_sheet(layout.screen, speaker);
        if (!speaker.behind_screen || before_m < 0.0) continue;
        out.add(at("loudspeakers", i, "behind_screen"),
                quoted(speaker.name) + " stands " + metres(before_m) + " in front of the sheet",
                "write false, or move it behind the sheet");
    }
}

}  // namespace rakeline::room
