// SPDX-License-Identifier: MIT
#include "sound/coverage_study.hpp"

#include "sound/random_sound_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using room::Channel;
using sound::kOctaves;
using sound::SoundInput;
using sound::SoundStudy;

namespace {

const auto kRounding = absolute(1e-9, "rounding of levels of order 100");

double level(const SoundStudy& study, std::size_t l, std::size_t band, std::size_t seat) {
    return study.loudspeakers.at(l).level_db.at(band).at(seat);
}

/// The room seen in a mirror: left and right changed round.
SoundInput mirrored(SoundInput in) {
    for (room::Loudspeaker& l : in.loudspeakers) {
        l.across_m = -l.across_m;
        l.yaw_rad = -l.yaw_rad;
    }
    for (glm::dvec3& ear : in.ears)
        ear.x = -ear.x;
    return in;
}

/// Of one channel, at the reference seat, all at the power that the study asks of each.
double level_when_driven(SoundInput in, Channel channel) {
    const SoundStudy study = sound::study_sound(in);
    const std::size_t band = sound::power_band(channel);
    double energy = 0.0;
    for (std::size_t l = 0; l < in.loudspeakers.size(); ++l) {
        if (in.loudspeakers[l].channel != channel) continue;
        const double power = study.coverage.loudspeakers[l].drive.value().amplifier_power_w;
        energy +=
            power / in.loudspeakers[l].power_w * std::pow(10.0, 0.1 * level(study, l, band, 24));
    }
    return 10.0 * std::log10(energy);
}

}  // namespace

TEST_SUITE("sound/coverage_study") {
    TEST_CASE("property: driven as asked, every channel reaches its own peak and its boost") {
        SoundDice dice(20260411);
        for (int i = 0; i < 50; ++i) {
            INFO("draw ", i, " of seed 20260411");
            const SoundInput in = random_sound_room(dice);
            const SoundStudy study = sound::study_sound(in);
            check_close(level_when_driven(in, Channel::surround), 102.0, kRounding);
            check_close(level_when_driven(in, Channel::sub_bass), 115.0, kRounding);
            for (std::size_t l = 0; l < 3; ++l) {
                const double boost = study.sheet.channels[l]
                                         ? study.sheet.channels[l]->equalisation.headroom_db
                                         : 0.0;
                check_close(level_when_driven(in, in.loudspeakers[l].channel), 105.0 + boost,
                            kRounding);
            }
        }
    }

    TEST_CASE("heat is the peak's power less the crest factor; margins are ratios to it") {
        SoundDice dice(20260412);
        const SoundInput in = random_sound_room(dice);
        const SoundStudy study = sound::study_sound(in);
        for (std::size_t l = 0; l < in.loudspeakers.size(); ++l) {
            const sound::Drive& drive = study.coverage.loudspeakers[l].drive.value();
            check_close(10.0 * std::log10(drive.amplifier_power_w / drive.thermal_power_w), 12.0,
                        kRounding);
            check_close(drive.amplifier_power_w * std::pow(10.0, 0.1 * drive.headroom_db),
                        in.loudspeakers[l].amplifier_w, relative(1e-12, "rounding"));
            check_close(drive.thermal_power_w * std::pow(10.0, 0.1 * drive.thermal_margin_db),
                        in.loudspeakers[l].power_w, relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("property: a mirrored room has mirrored levels") {
        SoundDice dice(20260413);
        for (int i = 0; i < 50; ++i) {
            INFO("draw ", i, " of seed 20260413");
            const SoundInput in = random_sound_room(dice);
            const SoundStudy a = sound::study_sound(in);
            const SoundStudy b = sound::study_sound(mirrored(in));
            for (std::size_t l = 0; l < in.loudspeakers.size(); ++l)
                for (std::size_t band = 0; band < kOctaves.size(); ++band)
                    for (std::size_t s = 0; s < in.ears.size(); ++s)
                        check_close(level(a, l, band, s), level(b, l, band, s),
                                    absolute(1e-6, "rounding, magnified near a piston's nulls"));
        }
    }

    TEST_CASE("property: one surround more never lowers the sum, and twins add 3.01 dB") {
        SoundDice dice(20260414);
        for (int i = 0; i < 50; ++i) {
            INFO("draw ", i, " of seed 20260414");
            SoundInput in = random_sound_room(dice);
            const auto before = sound::study_sound(in).coverage.surrounds.value();
            SoundInput more = in;
            more.loudspeakers.push_back(random_surround(dice));
            const auto after = sound::study_sound(more).coverage.surrounds.value();
            SoundInput twins = in;
            for (const room::Loudspeaker& l : in.loudspeakers)
                if (l.channel == Channel::surround) twins.loudspeakers.push_back(l);
            const auto doubled = sound::study_sound(twins).coverage.surrounds.value();
            for (std::size_t band = 0; band < kOctaves.size(); ++band) {
                for (std::size_t s = 0; s < in.ears.size(); ++s) {
                    CHECK(after.level_db[band][s] >= before.level_db[band][s]);
                    check_close(doubled.level_db[band][s] - before.level_db[band][s], 3.0103,
                                printed_digits(4));
                }
            }
        }
    }

    TEST_CASE("property: more seats never lower a spread") {
        SoundDice dice(20260415);
        for (int i = 0; i < 50; ++i) {
            INFO("draw ", i, " of seed 20260415");
            const SoundInput in = random_sound_room(dice);
            SoundInput more = in;
            for (int k = 0; k < 10; ++k)
                more.ears.emplace_back(dice.between(-5, 5), dice.between(1, 3),
                                       dice.between(4, 18));
            const SoundStudy a = sound::study_sound(in);
            const SoundStudy b = sound::study_sound(more);
            for (std::size_t band = 0; band < kOctaves.size(); ++band) {
                for (std::size_t l = 0; l < in.loudspeakers.size(); ++l)
                    CHECK(b.loudspeakers[l].spread_db[band] >= a.loudspeakers[l].spread_db[band]);
                CHECK(b.coverage.surrounds->spread_db[band] >=
                      a.coverage.surrounds->spread_db[band]);
            }
        }
    }

    TEST_CASE("property: turning a horn's axis to a seat never lowers that seat's level") {
        SoundDice dice(20260416);
        for (int i = 0; i < 300; ++i) {
            INFO("draw ", i, " of seed 20260416");
            SoundInput in = random_sound_room(dice);
            in.loudspeakers = {random_loudspeaker(dice, Channel::centre)};
            room::Loudspeaker& l = in.loudspeakers[0];
            l.directivity = room::Directivity::horn;
            in.ears = {{dice.between(-5, 5), dice.between(1, 4), dice.between(4, 20)}};
            in.reference_seat = 0;
            const SoundStudy before = sound::study_sound(in);
            const glm::dvec3 way = in.ears[0] - glm::dvec3(l.across_m, l.up_m, l.back_m);
            l.yaw_rad = std::atan2(way.x, way.z);
            l.pitch_rad = -std::atan2(way.y, std::hypot(way.x, way.z));
            const SoundStudy after = sound::study_sound(in);
            for (std::size_t band = 0; band < kOctaves.size(); ++band)
                CHECK(level(after, 0, band, 0) >= level(before, 0, band, 0) - 1e-12);
            CHECK(after.coverage.loudspeakers[0].aim.value().off_axis_rad < 1e-7);
        }
    }

    TEST_CASE(
        "seats within the window are counted about the reference seat, which is one of them") {
        SoundDice dice(20260417);
        const SoundInput in = random_sound_room(dice);
        const SoundStudy study = sound::study_sound(in);
        for (std::size_t band = 0; band < kOctaves.size(); ++band) {
            const auto& coverage = study.coverage.loudspeakers[0];
            CHECK(coverage.reference_db[band].value() == level(study, 0, band, 24));
            const auto& levels = study.loudspeakers[0].level_db[band];
            int within = 0;
            for (const double one : levels)
                within += std::abs(one - level(study, 0, band, 24)) <= 3.0 ? 1 : 0;
            CHECK(coverage.within_fraction[band].value() == within / 42.0);
            CHECK(within >= 1);
        }
    }

    TEST_CASE("the axis lands where it is aimed") {
        SoundDice dice(20260418);
        SoundInput in = random_sound_room(dice);
        room::Loudspeaker& l = in.loudspeakers[1];
        for (const std::size_t seat : {std::size_t{3}, std::size_t{17}, std::size_t{38}}) {
            const glm::dvec3 way = in.ears[seat] - glm::dvec3(l.across_m, l.up_m, l.back_m);
            l.yaw_rad = std::atan2(way.x, way.z);
            l.pitch_rad = -std::atan2(way.y, std::hypot(way.x, way.z));
            const auto aim = sound::study_sound(in).coverage.loudspeakers[1].aim.value();
            CHECK(aim.seat == static_cast<int>(seat));
            check_close(aim.depth_fraction, static_cast<double>(seat / 7) / 5.0,
                        absolute(1e-12, "rounding"));
        }
    }

    TEST_CASE("without surrounds, seats or a reference seat what hangs on them stays empty") {
        SoundDice dice(20260419);
        SoundInput in = random_sound_room(dice);
        in.loudspeakers.resize(4);
        in.reference_seat.reset();
        const SoundStudy study = sound::study_sound(in);
        CHECK_FALSE(study.coverage.surrounds);
        CHECK_FALSE(study.coverage.loudspeakers[0].drive);
        CHECK_FALSE(study.coverage.loudspeakers[0].within_fraction[3]);
        CHECK(study.coverage.loudspeakers[0].aim);
        in.ears.clear();
        CHECK_FALSE(sound::study_sound(in).coverage.loudspeakers[0].aim);
    }

    TEST_CASE("levels are the same bit for bit on one thread and on many") {
        SoundDice dice(20260420);
        SoundInput in = random_sound_room(dice);
        for (int i = 0; i < 400; ++i)
            in.ears.emplace_back(dice.between(-5, 5), dice.between(1, 3), dice.between(4, 18));
        const auto alone = sound::direct_levels(in, 1);
        for (const unsigned threads : {2u, 3u, 8u})
            CHECK(sound::direct_levels(in, threads) == alone);
    }
}
