// SPDX-License-Identifier: MIT
#include "light/gain_by_chord.hpp"

#include "light/lit_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;

TEST_SUITE("light/gain_by_chord") {
    TEST_CASE("property: the table reads as the model does, at every angle") {
        std::mt19937 random(312);
        std::uniform_real_distribution<double> angles(0.0, base::kPi);
        for (int n = 0; n < 40; ++n) {
            const bool lobe = n % 2 == 0;
            room::ScreenSurface surface =
                lobe ? tests::random_lobe(random) : tests::random_measured(random);
            surface.half_gain_angle_rad = base::radians(5.0 + 40.0 * angles(random) / base::kPi);
            const light::GainModel model(surface, 0.0);
            const light::GainByChord table(model);
            // A straight line over a step h of a curve with bend g'' is off by h^2 g''/8.
            const auto near = tests::absolute(3e-4 * surface.peak_gain, "lines over 1024 steps");
            for (int i = 0; i < 200; ++i) {
                const double angle = angles(random);
                const double chord = 2.0 * std::sin(0.5 * angle);
                check_close(table.off_lobe(chord), model.gain_off_lobe(angle), near);
                check_close(table.off_back(chord),
                            model.has_retro_part() ? model.retro_off_back(angle) : 0.0, near);
            }
        }
    }

    TEST_CASE("at the ends of the table stand the lobe's middle and the direction behind it") {
        room::ScreenSurface surface;
        surface.lobe = room::LobeKind::mirror;
        surface.peak_gain = 2.4;
        surface.matte_gain = 0.4;
        surface.half_gain_angle_rad = base::radians(20.0);
        const light::GainByChord table{light::GainModel(surface, 0.0)};
        const auto exact = tests::absolute(1e-12, "stored values");
        check_close(table.off_lobe(0.0), 2.4, exact);
        check_close(table.off_lobe(2.0), 0.4, exact);
        CHECK(table.off_back(0.3) == 0.0);
    }
}
