// SPDX-License-Identifier: MIT
#include "sound/lattice_turn.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {

double turn_range_rad(room::PerforationPattern pattern) {
    return base::radians(pattern == room::PerforationPattern::staggered ? 30.0 : 45.0);
}

double worst_risk(const HoleInput& in, const room::Perforation& holes) {
    double worst = 0.0;
    const std::vector<Order> orders = hole_orders(holes);
    for (const PixelPicture& picture : in.pictures)
        worst = std::max(worst, beat_risk(picture, orders, in.eyes));
    return worst;
}

std::optional<TurnAdvice> turn_advice(const HoleInput& in) {
    room::Perforation holes = in.perforation;
    if (holes.pattern == room::PerforationPattern::none || in.pictures.empty() || in.eyes.empty())
        return std::nullopt;
    TurnAdvice out;
    out.now = worst_risk(in, holes);
    const long steps = std::lround(turn_range_rad(holes.pattern) / kTurnStep_rad);
    for (long i = 0; i <= steps; ++i) {
        holes.angle_rad = static_cast<double>(i) * kTurnStep_rad;
        out.trials.push_back({holes.angle_rad, worst_risk(in, holes)});
    }
    const auto least = std::min_element(
        out.trials.begin(), out.trials.end(),
        [](const TurnTrial& a, const TurnTrial& b) { return a.visibility < b.visibility; });
    out.best = static_cast<std::size_t>(least - out.trials.begin());
    return out;
}

}  // namespace rakeline::sound
