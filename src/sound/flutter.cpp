// SPDX-License-Identifier: MIT
#include "sound/flutter.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

constexpr double kFrom_hz = 500.0;

/// A wall that absorbs all leaves nothing: levels end here, dB.
constexpr double kNothingLeft_db = -60.0;

/// `apart_m` between two surfaces; the band in which they send most to and fro decides.
Flutter flutter_between(double apart_m,
                        const room::OctaveAbsorption& one,
                        const room::OctaveAbsorption& other,
                        const Air& air) {
    Flutter out{.apart_m = apart_m, .every_s = 2.0 * apart_m / air.sound_speed_m_s()};
    double most = -1.0;
    for (std::size_t i = 0; i < room::kAbsorptionOctaves_hz.size(); ++i) {
        if (room::kAbsorptionOctaves_hz[i] < kFrom_hz) continue;
        const double first = 1.0 - one.by_octave[i];
        const double second = 1.0 - other.by_octave[i];
        if (first * second <= most) continue;
        most = first * second;
        out.frequency_hz = room::kAbsorptionOctaves_hz[i];
        out.first_return = first;
        out.second_return = second;
    }
    out.kept_db = most > 0.0 ? std::max(kNothingLeft_db, 10.0 * std::log10(most)) : kNothingLeft_db;
    return out;
}

}  // namespace

FlutterPairs flutter_pairs(const HallInput& hall, const Air& air) {
    const room::Acoustics& a = hall.acoustics;
    FlutterPairs out;
    if (2.0 * std::abs(hall.splay_rad) < kParallelWithin_rad) {
        const double middle_m = hall.width_m + hall.length_m * std::tan(hall.splay_rad);
        out.sides = flutter_between(middle_m, a.side_walls, a.side_walls, air);
    }
    out.length = flutter_between(hall.length_m, a.screen_wall, a.rear_wall, air);
    if (hall.level_floor && hall.level_floor->up_m < hall.height_m)
        out.height =
            flutter_between(hall.height_m - hall.level_floor->up_m, a.ceiling, a.floor, air);
    return out;
}

}  // namespace rakeline::sound
