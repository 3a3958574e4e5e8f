// SPDX-License-Identifier: MIT
#include "study/aim_advice.hpp"

#include "base/units.hpp"
#include "study/slices.hpp"

#include <cmath>

namespace rakeline::study {
namespace {

double rounded_to(double value, double step) {
    return step * std::round(value / step);
}

sound::Aim rounded(const sound::Aim& aim) {
    return {base::radians(rounded_to(base::degrees(aim.yaw_rad), 0.1)),
            base::radians(rounded_to(base::degrees(aim.pitch_rad), 0.1)),
            rounded_to(aim.up_m, 0.01)};
}

}  // namespace

std::optional<sound::AimProposal> aim_advice(const Study& study,
                                             int loudspeaker,
                                             bool move_height) {
    const sound::SoundInput in = sound_input(study);
    const auto which = static_cast<std::size_t>(loudspeaker);
    auto proposal = sound::best_aim(in, which, move_height);
    if (!proposal) return std::nullopt;
    proposal->after = rounded(proposal->after);
    if (!move_height) proposal->after.up_m = proposal->before.up_m;
    proposal->spread_after_db = sound::aim_spread_db(in, which, proposal->after);
    if (proposal->spread_after_db < proposal->spread_before_db) return proposal;
    proposal->after = proposal->before;
    proposal->spread_after_db = proposal->spread_before_db;
    return proposal;
}

room::Layout with_aim(const room::Layout& layout, int loudspeaker, const sound::Aim& aim) {
    room::Layout out = layout;
    room::Loudspeaker& l = out.loudspeakers.at(static_cast<std::size_t>(loudspeaker));
    l.yaw_rad = aim.yaw_rad;
    l.pitch_rad = aim.pitch_rad;
    l.up_m = aim.up_m;
    return out;
}

std::string aim_words(const room::Layout& layout,
                      int loudspeaker,
                      const sound::AimProposal& p,
                      base::UnitSystem units) {
    const std::string& name = layout.loudspeakers.at(static_cast<std::size_t>(loudspeaker)).name;
    const auto from_to = [&](double from, double to, base::Unit unit) {
        return base::quantity_text(from, unit, units) + " to " +
               base::quantity_text(to, unit, units);
    };
    if (p.after == p.before)
        return name + ": no aim gives less level spread at 2 to 8 kHz than its own, " +
               base::quantity_text(p.spread_before_db, base::Unit::decibel, units);
    std::string out = name + ": level spread at 2 to 8 kHz from " +
                      from_to(p.spread_before_db, p.spread_after_db, base::Unit::decibel) +
                      "; yaw " + from_to(p.before.yaw_rad, p.after.yaw_rad, base::Unit::radian) +
                      ", down " +
                      from_to(p.before.pitch_rad, p.after.pitch_rad, base::Unit::radian);
    if (p.before.up_m != p.after.up_m)
        out += ", up " + from_to(p.before.up_m, p.after.up_m, base::Unit::metre);
    return out;
}

}  // namespace rakeline::study
