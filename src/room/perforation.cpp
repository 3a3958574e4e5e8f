// SPDX-License-Identifier: MIT
#include "room/perforation.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::room {

double open_area(const Perforation& perforation) {
    if (perforation.pattern == PerforationPattern::none) return 0.0;
    const double d = perforation.hole_diameter_m;
    const double b = perforation.pitch_m;
    RL_ASSERT(b > 0.0);
    if (perforation.pattern == PerforationPattern::woven) return std::min(1.0, d * d / (b * b));
    const double hole_m2 = 0.25 * base::kPi * d * d;
    const bool square = perforation.pattern == PerforationPattern::square;
    const double cell_m2 = square ? b * b : 0.5 * std::sqrt(3.0) * b * b;
    return std::min(1.0, hole_m2 / cell_m2);
}

}  // namespace rakeline::room
