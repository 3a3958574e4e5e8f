// SPDX-License-Identifier: MIT
#include "room/check_internal.hpp"
#include "room/seat_plan.hpp"

#include <cmath>

namespace rakeline::room {

void check_within_hall(const Hall& hall,
                       const glm::dvec3& place,
                       const std::string& path,
                       Findings& out) {
    if (place.z > hall.length_m) {
        out.add(path + ".back_m",
                metres(place.z) + " is beyond the booth wall at " + metres(hall.length_m),
                "move it into the hall");
        return;
    }
    const double half_m = half_width_at(hall, place.z);
    if (std::abs(place.x) > half_m) {
        out.add(path + ".across_m",
                metres(place.x) + " is outside the side walls, which stand " + metres(half_m) +
                    " from the centre line there",
                "move it into the hall");
    }
    if (place.y > hall.height_m) {
        out.add(path + ".up_m",
                metres(place.y) + " is above the ceiling at " + metres(hall.height_m),
                "move it into the hall");
    }
}

void check_house_lights(const Layout& layout, Findings& out) {
    const std::vector<HouseLight>& lights = layout.stray_light.lights;
    check_names("stray_light.lights", lights, out);
    for (std::size_t i = 0; i < lights.size(); ++i) {
        const HouseLight& light = lights[i];
        check_within_hall(layout.hall, {light.across_m, light.up_m, light.back_m},
                          at("stray_light.lights", i), out);
    }
}

}  // namespace rakeline::room
