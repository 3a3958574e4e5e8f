// SPDX-License-Identifier: MIT
// Source: worked from the inverse square law of the free field: 105 dB at 20 m takes 131.02 dB at
// 1 m, and 126.5 W into a loudspeaker of 110 dB for 1 W at 1 m.
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
        const double power = study.loudspeakers[0].amplifier_power_w.value();
        check_close(power * std::pow(10.0, -air_db / 10.0), 126.5, printed_digits(1));
        const auto terms = sound::level_terms(loudspeaker, study.loudspeakers[0].paths[0], in.sheet,
                                              in.air, 1000.0);
        check_close(105.0 - terms.distance_db, 131.02, printed_digits(2));
    }
}
