// SPDX-License-Identifier: MIT
#include "sight/aisle_steps.hpp"

#include "base/assert.hpp"

#include <cmath>

namespace rakeline::sight {

AisleSteps aisle_steps(double riser_m, double spacing_m, double step_most_m) {
    RL_ASSERT(step_most_m > 0.0);
    constexpr double kRounding_m = 1e-9;
    const double height = std::abs(riser_m);
    if (height <= kRounding_m) return {};
    const double count = std::ceil((height - kRounding_m) / step_most_m);
    return {static_cast<int>(count), riser_m / count, spacing_m / count};
}

}  // namespace rakeline::sight
