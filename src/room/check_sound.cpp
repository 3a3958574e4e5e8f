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

/// Refuses a cabinet that no hall of this size takes in.
void check_cabinet(const Hall& hall,
                   const Loudspeaker& speaker,
                   const std::string& path,
                   Findings& out) {
    const auto check = [&](const char* key, double cabinet_m, double hall_m, const char* of) {
        if (cabinet_m <= hall_m) return;
        out.add(path + "." + key,
                quoted(speaker.name) + " is " + metres(cabinet_m) + ", more than the hall's " + of +
                    " of " + metres(hall_m),
                "give its outside size in metres");
    };
    check("cabinet_width_m", speaker.cabinet_width_m, hall.width_m, "width");
    check("cabinet_height_m", speaker.cabinet_height_m, hall.height_m, "height");
    check("cabinet_depth_m", speaker.cabinet_depth_m, hall.length_m, "length");
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
        check_cabinet(layout.hall, speaker, at("loudspeakers", i), out);
        const double before_m = before_sheet(layout.screen, speaker);
        if (!speaker.behind_screen || before_m < 0.0) continue;
        out.add(at("loudspeakers", i, "behind_screen"),
                quoted(speaker.name) + " stands " + metres(before_m) + " in front of the sheet",
                "write false, or move it behind the sheet");
    }
}

}  // namespace rakeline::room
