// SPDX-License-Identifier: MIT
#pragma once

#include "sound/sound_study.hpp"

#include <random>

/// Random rooms for sound: screen channels behind a flat or curved sheet, sub-bass and surrounds,
/// ears on rows that rise.
namespace rakeline::tests {

class SoundDice {
public:
    explicit SoundDice(unsigned seed) : random_(seed) {}
    double between(double least, double most) {
        return least + (most - least) * static_cast<double>(random_()) / 4294967295.0;
    }
    bool even() { return random_() % 2 == 0; }

private:
    std::mt19937 random_;
};

inline room::Loudspeaker random_loudspeaker(SoundDice& dice, room::Channel channel) {
    room::Loudspeaker l;
    l.channel = channel;
    l.across_m = dice.between(-5.0, 5.0);
    l.up_m = dice.between(1.5, 5.0);
    l.back_m = dice.between(0.2, 0.9);
    l.yaw_rad = dice.between(-0.4, 0.4);
    l.pitch_rad = dice.between(-0.1, 0.3);
    l.sensitivity_db = dice.between(90.0, 112.0);
    l.power_w = dice.between(100.0, 2000.0);
    l.amplifier_w = dice.between(100.0, 3000.0);
    l.coverage_across_rad = dice.between(0.8, 2.0);
    l.coverage_up_rad = dice.between(0.5, 1.6);
    if (dice.even())
        l.coverage_table = {{500.0, dice.between(1.0, 2.5), dice.between(0.8, 2.0)},
                            {2000.0, dice.between(0.8, 2.0), dice.between(0.6, 1.2)},
                            {8000.0, dice.between(0.6, 1.6), dice.between(0.4, 1.0)}};
    if (channel == room::Channel::sub_bass || dice.even())
        l.directivity = room::Directivity::piston;
    return l;
}

inline room::Loudspeaker random_surround(SoundDice& dice) {
    room::Loudspeaker l = random_loudspeaker(dice, room::Channel::surround);
    l.behind_screen = false;
    l.across_m = dice.even() ? -7.0 : 7.0;
    l.back_m = dice.between(4.0, 18.0);
    l.yaw_rad = l.across_m < 0.0 ? 1.57 : -1.57;
    return l;
}

inline sound::SoundInput random_sound_room(SoundDice& dice) {
    using room::Channel;
    sound::SoundInput in;
    in.surface = geometry::standing_patch({0, 3.0, 1.2}, dice.even() ? 0.0 : 25.0, 0.0);
    in.sheet.perforation.pattern = room::PerforationPattern::square;
    for (const Channel channel :
         {Channel::left, Channel::centre, Channel::right, Channel::sub_bass})
        in.loudspeakers.push_back(random_loudspeaker(dice, channel));
    for (int i = 0; i < 4; ++i)
        in.loudspeakers.push_back(random_surround(dice));
    for (int row = 0; row < 6; ++row)
        for (int seat = -3; seat <= 3; ++seat)
            in.ears.emplace_back(0.9 * seat, 1.2 + 0.2 * row, 5.0 + 2.0 * row);
    in.reference_seat = 24;
    return in;
}

}  // namespace rakeline::tests
