// SPDX-License-Identifier: MIT
#include "room/check_internal.hpp"

namespace rakeline::room {

void check_audience(const Layout& layout, Findings& out) {
    const Audience& audience = layout.audience;
    const double low_m = audience.wheelchair_eye_low_m;
    const double high_m = audience.wheelchair_eye_high_m;
    const double typical_m = audience.wheelchair_eye_height_m;
    if (low_m > high_m) {
        out.add("audience.wheelchair_eye_low_m",
                metres(low_m) + " is over the range's upper end at " + metres(high_m),
                "give the lower end of the range of eye heights first");
        return;
    }
    if (typical_m >= low_m && typical_m <= high_m) return;
    out.add("audience.wheelchair_eye_height_m",
            metres(typical_m) + " is outside the range of " + metres(low_m) + " to " +
                metres(high_m) + " that a place has to serve",
            "choose an eye height within the range, or widen the range");
}

}  // namespace rakeline::room
