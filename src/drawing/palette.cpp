// SPDX-License-Identifier: MIT
#include "drawing/palette.hpp"

#include "base/assert.hpp"
#include "drawing/palette_table.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::drawing {

Rgb cividis(double position) {
    RL_ASSERT(std::isfinite(position));
    const double last = static_cast<double>(kCividis.size() - 1);
    const double place = std::clamp(position, 0.0, 1.0) * last;
    const auto low = static_cast<std::size_t>(std::min(std::floor(place), last - 1.0));
    const double part = place - static_cast<double>(low);
    const Rgb& a = kCividis[low];
    const Rgb& b = kCividis[low + 1];
    return {std::lerp(a.r, b.r, part), std::lerp(a.g, b.g, part), std::lerp(a.b, b.b, part)};
}

}  // namespace rakeline::drawing
