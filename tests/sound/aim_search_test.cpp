// SPDX-License-Identifier: MIT
#include "sound/aim_search.hpp"

#include "base/units.hpp"
#include "sound/random_sound_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using sound::Aim;

namespace {

/// Whether an axis at this height points at some seat's direction, or up to 5 degrees above.
bool points_at_seats(const sound::SoundInput& in, const room::Loudspeaker& l, const Aim& aim) {
    double left = 9.0, right = -9.0, high = 9.0, low = -9.0;
    for (const glm::dvec3& ear : in.ears) {
        const glm::dvec3 way = ear - glm::dvec3(l.across_m, aim.up_m, l.back_m);
        left = std::min(left, std::atan2(way.x, way.z));
        right = std::max(right, std::atan2(way.x, way.z));
        high = std::min(high, std::atan2(-way.y, std::hypot(way.x, way.z)));
        low = std::max(low, std::atan2(-way.y, std::hypot(way.x, way.z)));
    }
    return aim.yaw_rad > left && aim.yaw_rad < right && aim.pitch_rad < low &&
           aim.pitch_rad > high - base::radians(5.0);
}

}  // namespace

TEST_SUITE("sound/aim_search") {
    TEST_CASE("the spread that is searched is the study's own, averaged over its octaves") {
        SoundDice dice(20260431);
        const sound::SoundInput in = random_sound_room(dice);
        const sound::SoundStudy study = sound::study_sound(in);
        const room::Loudspeaker& l = in.loudspeakers[1];
        double mean = 0.0;
        for (const std::size_t band : sound::kAimBands)
            mean += study.loudspeakers[1].spread_db[band].value() / 3.0;
        check_close(sound::aim_spread_db(in, 1, {l.yaw_rad, l.pitch_rad, l.up_m}), mean,
                    absolute(1e-10, "rounding of levels of order 100"));
    }

    TEST_CASE("property: no aim round the one found, and no random one, is better by 0.1 dB") {
        SoundDice dice(20260432);
        for (int i = 0; i < 12; ++i) {
            INFO("draw ", i, " of seed 20260432");
            sound::SoundInput in = random_sound_room(dice);
            in.loudspeakers[1].directivity = room::Directivity::horn;
            const auto found = sound::best_aim(in, 1, false).value();
            CHECK(found.spread_after_db <= found.spread_before_db);
            CHECK(found.after.up_m == found.before.up_m);
            CHECK(sound::aim_spread_db(in, 1, found.after) == found.spread_after_db);
            for (int k = 0; k < 200; ++k) {
                const Aim other{found.after.yaw_rad + dice.between(-0.05, 0.05),
                                found.after.pitch_rad + dice.between(-0.05, 0.05),
                                found.after.up_m};
                if (!points_at_seats(in, in.loudspeakers[1], other)) continue;
                CHECK(sound::aim_spread_db(in, 1, other) > found.spread_after_db - 0.1);
            }
        }
    }

    TEST_CASE("where the room is its own mirror image the centre is aimed down the middle") {
        SoundDice dice(20260433);
        sound::SoundInput in = random_sound_room(dice);
        room::Loudspeaker& l = in.loudspeakers[1];
        l = room::Loudspeaker{};
        l.up_m = 4.0;
        l.back_m = 0.5;
        l.yaw_rad = base::radians(9.0);
        const auto found = sound::best_aim(in, 1, false).value();
        check_close(found.after.yaw_rad, 0.0,
                    absolute(base::radians(1.0), "the spread is flat there"));
        CHECK(found.spread_after_db < found.spread_before_db);
    }

    TEST_CASE("moved in height too, it is no worse and the cabinet stays within the picture") {
        SoundDice dice(20260434);
        for (int i = 0; i < 6; ++i) {
            INFO("draw ", i, " of seed 20260434");
            sound::SoundInput in = random_sound_room(dice);
            in.screen_height_m = 5.0;
            for (room::Loudspeaker& l : in.loudspeakers)
                l.up_m = 3.0;
            const auto turned = sound::best_aim(in, 0, false).value();
            const auto moved = sound::best_aim(in, 0, true).value();
            CHECK(moved.spread_after_db <= turned.spread_before_db);
            CHECK(moved.after.up_m >= 0.5 + 0.45 - 1e-12);
            CHECK(moved.after.up_m <= 5.5 - 0.45 + 1e-12);
        }
    }

    TEST_CASE("surrounds, sub-bass and rooms without seats have nothing to aim") {
        SoundDice dice(20260435);
        sound::SoundInput in = random_sound_room(dice);
        CHECK_FALSE(sound::best_aim(in, 3, false));
        CHECK_FALSE(sound::best_aim(in, 5, false));
        in.ears.clear();
        CHECK_FALSE(sound::best_aim(in, 0, false));
    }
}
