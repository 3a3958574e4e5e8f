// SPDX-License-Identifier: MIT
#include "sound/eye_contrast.hpp"

#include "base/assert.hpp"

#include <cmath>

namespace rakeline::sound {

ContrastSense::ContrastSense(double luminance_cdm2)
    : exponent_(0.0016 * std::pow(1.0 + 100.0 / luminance_cdm2, 0.08)),
      noise_(63.0 / std::pow(luminance_cdm2, 0.83)) {
    RL_ASSERT(luminance_cdm2 > 0.0);
}

double ContrastSense::sensitivity(double cycles_per_degree, double field_deg2) const {
    const double u2 = cycles_per_degree * cycles_per_degree;
    const double inhibition = -std::expm1(-0.02 * u2);
    if (!(inhibition > 0.0)) return 0.0;
    const double field = 1.0 + 144.0 / field_deg2 + 0.64 * u2;
    return 5200.0 * std::exp(-exponent_ * u2) / std::sqrt(field * (noise_ + 1.0 / inhibition));
}

}  // namespace rakeline::sound
