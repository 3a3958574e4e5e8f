// SPDX-License-Identifier: MIT
#include "sight/chance.hpp"

#include "base/assert.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sight {
namespace {

constexpr double kZ = 1.959963984540054;  // 97.5 % of the standard normal distribution lie below

}  // namespace

Interval wilson_interval(const Chance& chance) {
    RL_ASSERT(chance.drawn > 0 && chance.clear >= 0 && chance.clear <= chance.drawn);
    const double n = chance.drawn;
    const double p = chance.share();
    const double scale = 1.0 / (1.0 + kZ * kZ / n);
    const double middle = scale * (p + kZ * kZ / (2.0 * n));
    const double half = scale * kZ * std::sqrt(p * (1.0 - p) / n + kZ * kZ / (4.0 * n * n));
    // Rounding could carry the ends past the share where all or none were clear.
    return {std::clamp(middle - half, 0.0, p), std::clamp(middle + half, p, 1.0)};
}

}  // namespace rakeline::sight
