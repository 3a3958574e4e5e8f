// SPDX-License-Identifier: MIT
#include "sound/aim_search.hpp"

#include "base/units.hpp"

#include <algorithm>
#include <cmath>

namespace rakeline::sound {
namespace {

constexpr double kFinestTurn_rad = base::radians(0.1);
constexpr double kFinestHeight_m = 0.01;
constexpr double kOverSeats_rad = base::radians(5.0);
constexpr int kGrid = 9;  ///< directions each way of the first look

void put(const Aim& aim, room::Loudspeaker& loudspeaker) {
    loudspeaker.yaw_rad = aim.yaw_rad;
    loudspeaker.pitch_rad = aim.pitch_rad;
    loudspeaker.up_m = aim.up_m;
}

/// The spread as a function of the aim, with what no aim changes computed once.
class Spread {
public:
    Spread(const SoundInput& in, std::size_t which)
        : in_(in), loudspeaker_(in.loudspeakers.at(which)) {
        for (std::size_t i = 0; i < kAimBands.size(); ++i) {
            const double hz = kOctaves.at(kAimBands.at(i));
            beams_.push_back(Beam(loudspeaker_, hz, in.air));
            sheets_.at(i) = relative_impedance(in.sheet, hz, in.air);
            air_db_per_m_.at(i) = air_absorption_db_per_m(hz, in.air);
        }
    }

    double operator()(const Aim& aim) const {
        room::Loudspeaker turned = loudspeaker_;
        put(aim, turned);
        std::array<double, kAimBands.size()> most{}, least{};
        most.fill(-1e9);
        least.fill(1e9);
        for (const glm::dvec3& ear : in_.ears) {
            const DirectPath path = direct_path(turned, in_.surface, ear);
            const double near = std::max(path.distance_m, kNearestPath_m);
            for (std::size_t i = 0; i < kAimBands.size(); ++i) {
                const double level = beams_[i].level_db(path.off_axis) - 20.0 * std::log10(near) -
                                     air_db_per_m_[i] * path.distance_m - sheet_db(path, i);
                most[i] = std::max(most[i], level);
                least[i] = std::min(least[i], level);
            }
        }
        double sum = 0.0;
        for (std::size_t i = 0; i < kAimBands.size(); ++i)
            sum += most[i] - least[i];
        return sum / static_cast<double>(kAimBands.size());
    }

private:
    double sheet_db(const DirectPath& path, std::size_t band) const {
        return path.through_sheet ? transmission_loss_db(sheets_[band], path.cos_sheet) : 0.0;
    }

    const SoundInput& in_;
    const room::Loudspeaker& loudspeaker_;
    std::vector<Beam> beams_;
    std::array<std::complex<double>, kAimBands.size()> sheets_;
    std::array<double, kAimBands.size()> air_db_per_m_{};
};

struct Range {
    double low = 0.0;
    double high = 0.0;
};

/// Directions from the loudspeaker, at some height, to the seats; widened a little upward, since a
/// horn may point over the last row. What lies outside them points at walls.
struct Directions {
    Range yaw{1e9, -1e9};
    Range pitch{1e9, -1e9};

    bool include(const Aim& aim) const {
        return aim.yaw_rad >= yaw.low && aim.yaw_rad <= yaw.high && aim.pitch_rad >= pitch.low &&
               aim.pitch_rad <= pitch.high;
    }
};

Directions directions_to_seats(const SoundInput& in, const room::Loudspeaker& l, double up_m) {
    Directions out;
    const auto widen = [](Range& range, double value) {
        range.low = std::min(range.low, value);
        range.high = std::max(range.high, value);
    };
    for (const glm::dvec3& ear : in.ears) {
        const glm::dvec3 way = ear - glm::dvec3(l.across_m, up_m, l.back_m);
        widen(out.yaw, std::atan2(way.x, way.z));
        widen(out.pitch, -std::atan2(way.y, std::hypot(way.x, way.z)));
    }
    out.pitch.low -= kOverSeats_rad;
    return out;
}

/// Heights at which the cabinet, upright, stays within the frame; its own alone if it does nowhere.
Range heights(const SoundInput& in, const room::Loudspeaker& l, bool move) {
    if (!move) return {l.up_m, l.up_m};
    const double half = 0.5 * in.screen_height_m;
    const double low = geometry::point_at(in.surface, {0.0, -half}).y + 0.5 * l.cabinet_height_m;
    const double high = geometry::point_at(in.surface, {0.0, half}).y - 0.5 * l.cabinet_height_m;
    return low < high ? Range{low, high} : Range{l.up_m, l.up_m};
}

struct Question {
    const SoundInput& in;
    const room::Loudspeaker& loudspeaker;
    Spread spread;
};

struct Best {
    Aim aim;
    double spread_db = 0.0;
};

/// Takes the aim where it points at the seats and is better than the best so far.
bool try_aim(const Question& ask, const Aim& aim, Best& best) {
    if (!directions_to_seats(ask.in, ask.loudspeaker, aim.up_m).include(aim)) return false;
    const double now = ask.spread(aim);
    if (now >= best.spread_db - 1e-9) return false;
    best = {aim, now};
    return true;
}

void look_over_grid(const Question& ask, Best& best) {
    const Aim start = best.aim;
    const Directions to = directions_to_seats(ask.in, ask.loudspeaker, start.up_m);
    const auto at = [](const Range& range, int i) {
        return range.low + (range.high - range.low) * i / (kGrid - 1);
    };
    for (int yaw = 0; yaw < kGrid; ++yaw)
        for (int pitch = 0; pitch < kGrid; ++pitch)
            try_aim(ask, {at(to.yaw, yaw), at(to.pitch, pitch), start.up_m}, best);
}

void refine(const Question& ask, const Range& height, Best& best) {
    double turn = base::radians(6.4);
    double rise = height.low < height.high ? 0.64 : 0.0;
    while (turn >= kFinestTurn_rad || rise >= kFinestHeight_m) {
        bool better = false;
        for (const double sign : {-1.0, 1.0}) {
            Aim aim = best.aim;
            aim.yaw_rad += sign * turn;
            better = try_aim(ask, aim, best) || better;
            aim = best.aim;
            aim.pitch_rad += sign * turn;
            better = try_aim(ask, aim, best) || better;
            if (rise == 0.0) continue;
            aim = best.aim;
            aim.up_m = std::clamp(aim.up_m + sign * rise, height.low, height.high);
            better = try_aim(ask, aim, best) || better;
        }
        if (better) continue;
        turn *= 0.5;
        rise *= 0.5;
    }
}

}  // namespace

double aim_spread_db(const SoundInput& in, std::size_t loudspeaker, const Aim& aim) {
    return Spread(in, loudspeaker)(aim);
}

std::optional<AimProposal> best_aim(const SoundInput& in,
                                    std::size_t loudspeaker,
                                    bool move_height) {
    const room::Loudspeaker& l = in.loudspeakers.at(loudspeaker);
    if (in.ears.empty() || !is_screen_channel(l.channel)) return std::nullopt;
    const Question ask{in, l, Spread(in, loudspeaker)};
    AimProposal out;
    out.before = {l.yaw_rad, l.pitch_rad, l.up_m};
    out.spread_before_db = ask.spread(out.before);
    Best best{out.before, out.spread_before_db};
    look_over_grid(ask, best);
    refine(ask, heights(in, l, move_height), best);
    out.after = best.aim;
    out.spread_after_db = best.spread_db;
    return out;
}

}  // namespace rakeline::sound
