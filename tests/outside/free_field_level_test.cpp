// SPDX-License-Identifier: MIT
// Source: worked from the inverse square law of the free field: 105 dB at 20 m takes 131.02 dB at
// 1 m, and 126.5 W into a loudspeaker of 110 dB for 1 W at 1 m.
#include "base/units.hpp"
#include "sound/sound_study.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("outside/free_field_level") {
    TEST_CASE("golden: power for 105 dB at 20 m") {
        sound::SoundInput in;
        room::Loudspeaker loudspeaker;
        loudspeaker.sensitivity_db = 110.0;
        loudspeaker.power_w = 80.0;
        loudspeaker.behind_screen = false;
        loudspeaker.up_m = 1.2;
        loudspeaker.back_m = 0.0;
        in.loudspeakers = {loudspeaker};
        in.ears = {{0.0, 1.2, 20.0}};
        in.reference_seat = 0;
        in.peak_level_db = 105.0;
        const sound::SoundStudy study = sound::study_sound(in);
        // The source leaves out the air, which takes 0.09 dB over 20 m at 1 kHz.
        const double air_db = 20.0 * sound::air_absorption_db_per_m(1000.0, in.air);
        const double power = study.coverage.loudspeakers[0].drive.value().amplifier_power_w;
        check_close(power * std::pow(10.0, -air_db / 10.0), 126.5, printed_digits(1));
        const auto terms = sound::level_terms(loudspeaker, study.loudspeakers[0].paths[0], in.sheet,
                                              in.air, 1000.0);
        check_close(105.0 - terms.distance_db, 131.02, printed_digits(2));
    }

    TEST_CASE("golden: an array of surrounds to 102 dB, each a share of one loudspeaker's power") {
        // By hand from the same law, the air left out: 95 dB for 1 W at 1 m is 81.02 dB at 5 m; 102
        // dB of one alone takes 10^2.098 = 125.3 W, of four at the same distance a quarter each.
        sound::SoundInput in;
        room::Loudspeaker surround;
        surround.channel = room::Channel::surround;
        surround.sensitivity_db = 95.0;
        surround.power_w = 300.0;
        surround.behind_screen = false;
        surround.up_m = 1.2;
        for (const double back : {5.0, 15.0}) {
            surround.back_m = back;
            surround.yaw_rad = back < 10.0 ? 0.0 : base::radians(180.0);
            in.loudspeakers.push_back(surround);
        }
        surround.back_m = 10.0;
        for (const double across : {-5.0, 5.0}) {
            surround.across_m = across;
            surround.yaw_rad = across < 0.0 ? base::radians(90.0) : base::radians(-90.0);
            in.loudspeakers.push_back(surround);
        }
        in.ears = {{0.0, 1.2, 10.0}};
        in.reference_seat = 0;
        const sound::SoundStudy study = sound::study_sound(in);
        const double air_db = 5.0 * sound::air_absorption_db_per_m(1000.0, in.air);
        for (const sound::LoudspeakerCoverage& one : study.coverage.loudspeakers)
            check_close(one.drive.value().amplifier_power_w * std::pow(10.0, -air_db / 10.0),
                        0.25 * 125.3, printed_digits(1));
    }
}
