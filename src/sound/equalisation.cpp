// SPDX-License-Identifier: MIT
#include "sound/equalisation.hpp"

#include <algorithm>

namespace rakeline::sound {
namespace {

constexpr double kLowest_hz = 40.0;

/// From 20 Hz: 20 25 31.5 40 50 | 63 to 2000 | 2500 ... 10000 | 12500 16000 20000.
constexpr Thirds kXCurve = {-2, -2, -2, -2, -1, 0,  0,  0,  0,  0,  0,  0,  0,  0,   0,  0,
                            0,  0,  0,  0,  0,  -1, -2, -3, -4, -5, -6, -7, -9, -11, -13};

}  // namespace

double house_curve_db(room::HouseCurve curve, std::size_t third) {
    return curve == room::HouseCurve::x_curve ? kXCurve.at(third) : 0.0;
}

Equalisation equalisation(const Thirds& loss_db,
                          const Thirds& gap_level_db,
                          const room::Playback& playback) {
    constexpr std::size_t kMiddle = third_at(1000.0);
    const auto lost = [&](std::size_t i) { return loss_db.at(i) - gap_level_db.at(i); };
    Equalisation out;
    for (std::size_t i = 0; i < kThirds.size(); ++i) {
        if (kThirds.at(i) < kLowest_hz || kThirds.at(i) > playback.equalise_to_hz) continue;
        const double boost = lost(i) - lost(kMiddle) + house_curve_db(playback.house_curve, i);
        out.boost_db.at(i) = boost;
        if (i >= kMiddle) out.headroom_db = std::max(out.headroom_db, boost);
    }
    return out;
}

}  // namespace rakeline::sound
