// SPDX-License-Identifier: MIT
#include "sound/gap.hpp"

#include "base/units.hpp"
#include "sound/random_sheet.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;
using sound::Gap;
using Complex = std::complex<double>;

namespace {

const sound::Air kAir;

room::OctaveAbsorption even(double alpha) {
    room::OctaveAbsorption out;
    out.by_octave.fill(alpha);
    return out;
}

struct Case {
    sound::Sheet sheet;
    double baffle = 0.0;  ///< reflection
    Gap gap;
    double frequency_hz = 0.0;

    Complex relative() const { return sound::relative_impedance(sheet, frequency_hz, kAir); }
    Complex loop() const { return sound::loop_factor(relative(), baffle, gap); }
};

Case random_case(std::mt19937& random) {
    return {random_sheet(random),
            between(random, 0.0, 1.0),
            {between(random, 0.01, 2.0), between(random, 0.0, 1.2)},
            random_frequency(random)};
}

/// Pressure behind sheet and gap over that without a baffle, by the waves of each region: right-
/// and left-going in the gap, right-going behind. A source wave of 1 leaves the baffle; what comes
/// back to it leaves it again, times the baffle's reflection.
double level_by_waves(const Case& c) {
    const double cosine = std::cos(c.gap.incidence_rad);
    const Complex x = c.relative() * cosine;  // z cos/(2 rho c)
    const double k_depth =
        2.0 * base::kPi * c.frequency_hz / kAir.sound_speed_m_s() * c.gap.along_m * cosine * cosine;
    const Complex on = std::polar(1.0, -k_depth);
    // Unknowns a (leaves the baffle), b (arrives back at it), t (goes on behind the sheet):
    //   a = 1 + R b;   a on - b/on = t (velocity);   a on + b/on - t = 2 x t (pressure over z)
    // Adding the last two: a on = (1 + x) t, b = x t on; so (1 + x)/on t = 1 + R x on t.
    const Complex t = 1.0 / ((1.0 + x) / on - c.baffle * x * on);
    const Complex without = on / (1.0 + x);
    return 20.0 * std::log10(std::abs(t / without));
}

}  // namespace

TEST_SUITE("sound/gap") {
    TEST_CASE("property: the sum of all passes is what the waves of every region give") {
        std::mt19937 random(20260331);
        for (int i = 0; i < 2000; ++i) {
            INFO("draw ", i, " of seed 20260331");
            const Case c = random_case(random);
            check_close(sound::gap_level_db(c.loop(), c.frequency_hz, c.gap, kAir),
                        level_by_waves(c),
                        absolute(1e-8, "rounding, near peaks of heavy sheets much magnified"));
        }
    }

    TEST_CASE("property: a baffle that takes in everything leaves no ripple") {
        std::mt19937 random(20260332);
        for (int i = 0; i < 200; ++i) {
            Case c = random_case(random);
            c.baffle = sound::baffle_reflection(even(1.0), c.frequency_hz);
            CHECK(sound::gap_level_db(c.loop(), c.frequency_hz, c.gap, kAir) == 0.0);
            CHECK(sound::gap_ripple_db(c.loop()) == 0.0);
            check_close(sound::gap_band_level_db(c.loop(), 900.0, 1100.0, c.gap, kAir), 0.0,
                        absolute(1e-12, "rounding"));
        }
    }

    TEST_CASE("property: a hard baffle at the sheet itself makes good all that the sheet loses") {
        // Nothing can go back: the whole flow has to go through.
        std::mt19937 random(20260333);
        for (int i = 0; i < 500; ++i) {
            INFO("draw ", i, " of seed 20260333");
            Case c = random_case(random);
            c.baffle = 1.0;
            c.gap.along_m = 1e-12;
            check_close(sound::gap_level_db(c.loop(), c.frequency_hz, c.gap, kAir),
                        sound::transmission_loss_db(c.relative(), std::cos(c.gap.incidence_rad)),
                        absolute(1e-5, "a gap of 1 pm, rounding of 1 - q near 0"));
        }
    }

    TEST_CASE("property: no level lies outside peak and dip, and these are as far apart as said") {
        std::mt19937 random(20260334);
        for (int i = 0; i < 300; ++i) {
            INFO("draw ", i, " of seed 20260334");
            const Case c = random_case(random);
            const Complex loop = c.loop();
            const double r = std::abs(loop);
            const double peak = -20.0 * std::log10(1.0 - r);
            const double dip = -20.0 * std::log10(1.0 + r);
            const double spacing = sound::ripple_spacing_hz(c.gap, kAir);
            double least = 1e9, most = -1e9;
            for (int k = 0; k < 2000; ++k) {
                const double level =
                    sound::gap_level_db(loop, 1000.0 + spacing * k / 2000.0, c.gap, kAir);
                least = std::min(least, level);
                most = std::max(most, level);
            }
            CHECK(most <= peak + 1e-9);
            CHECK(least >= dip - 1e-9);
            if (r < 0.9) {
                check_close(most - least, sound::gap_ripple_db(loop),
                            absolute(0.01, "2000 steps through a resonance of r < 0.9"));
            }
        }
    }

    TEST_CASE("property: the level of a band is the mean energy over it") {
        std::mt19937 random(20260335);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260335");
            Case c = random_case(random);
            c.baffle = std::min(c.baffle, 0.9);
            const double low = c.frequency_hz, high = c.frequency_hz * std::cbrt(2.0);
            constexpr int kSteps = 20000;
            double energy = 0.0;
            for (int k = 0; k < kSteps; ++k) {
                const double f = low + (high - low) * (k + 0.5) / kSteps;
                energy += std::pow(10.0, 0.1 * sound::gap_level_db(c.loop(), f, c.gap, kAir));
            }
            check_close(sound::gap_band_level_db(c.loop(), low, high, c.gap, kAir),
                        10.0 * std::log10(energy / kSteps),
                        absolute(1e-3, "midpoint rule, 200 steps a ripple or more"));
        }
    }

    TEST_CASE("the band's level is steady where the gap shrinks to nothing") {
        Case c;
        c.sheet.perforation.pattern = room::PerforationPattern::square;
        c.baffle = 0.8;
        c.frequency_hz = 4000.0;
        const auto at = [&](double along_m) {
            c.gap.along_m = along_m;
            return sound::gap_band_level_db(c.loop(), 3900.0, 4100.0, c.gap, kAir);
        };
        // 1e-8 and 1e-7 m lie on the near side of the switch to the tone, 1e-6 m on the far side.
        for (const double near : {1e-8, 1e-7, 1e-6})
            check_close(at(near), at(1e-12),
                        absolute(1e-3, "1 um turns the phase by 1.5e-4; rounding over it 1e-9"));
    }

    TEST_CASE("property: the first dip is one, and no lower frequency is") {
        std::mt19937 random(20260336);
        for (int i = 0; i < 300; ++i) {
            INFO("draw ", i, " of seed 20260336");
            const Case c = random_case(random);
            const sound::GapSetting setting{c.sheet, kAir};
            const double dip = sound::first_dip_hz(setting, c.gap);
            const double spacing = sound::ripple_spacing_hz(c.gap, kAir);
            CHECK(dip >= 0.5 * spacing * (1.0 - 1e-12));
            CHECK(dip <= 0.75 * spacing * (1.0 + 1e-12));
            // There a pass comes back in opposite phase: 1 - q is as large as it can be.
            const Complex loop =
                sound::loop_factor(sound::relative_impedance(c.sheet, dip, kAir), 0.5, c.gap);
            check_close(sound::gap_level_db(loop, dip, c.gap, kAir),
                        -20.0 * std::log10(1.0 + std::abs(loop)),
                        absolute(1e-9, "phase found to 2^-38 of the spacing"));
            // And the distance for that frequency is this one.
            check_close(sound::distance_of_dip_m(setting, dip, c.gap.incidence_rad), c.gap.along_m,
                        relative(1e-9, "there and back"));
        }
    }

    TEST_CASE("a heavy closed sheet has its dips half way between peaks, a light one later") {
        sound::Sheet sheet;
        sheet.perforation.pattern = room::PerforationPattern::none;
        const Gap gap{0.5, 0.0};
        const double spacing = 343.2 / 1.0;
        sheet.mass_kg_m2 = 1e5;
        check_close(sound::first_dip_hz({sheet, kAir}, gap), 0.5 * spacing,
                    relative(1e-4, "phase of 1e5 kg/m2"));
        sheet.mass_kg_m2 = 1e-6;
        check_close(sound::first_dip_hz({sheet, kAir}, gap), 0.75 * spacing,
                    relative(1e-4, "phase of 1 mg/m2"));
    }

    TEST_CASE("the baffle's absorption runs straight between octaves and is held beyond them") {
        const room::OctaveAbsorption baffle{{0.1, 0.2, 0.4, 0.5, 0.84, 0.75}};
        const auto alpha = [&](double f) {
            const double r = sound::baffle_reflection(baffle, f);
            return 1.0 - r * r;
        };
        const auto rounding = absolute(1e-12, "rounding");
        check_close(alpha(20.0), 0.1, rounding);
        check_close(alpha(125.0), 0.1, rounding);
        check_close(alpha(125.0 * std::sqrt(2.0)), 0.15, rounding);
        check_close(alpha(2000.0), 0.84, rounding);
        check_close(alpha(4000.0), 0.75, rounding);
        check_close(alpha(16000.0), 0.75, rounding);
        check_close(sound::baffle_reflection(baffle, 2000.0), 0.4, rounding);
    }

    TEST_CASE("the gap runs along the loudspeaker's axis") {
        const auto flat = geometry::standing_patch({0.0, 3.0, 1.5}, 0.0, 0.0);
        room::Loudspeaker speaker;
        speaker.back_m = 0.5;
        const auto straight = sound::gap_of(speaker, flat);
        REQUIRE(straight);
        check_close(straight->along_m, 1.0, absolute(1e-12, "rounding"));
        check_close(straight->incidence_rad, 0.0, absolute(1e-7, "an arc cosine near 1"));
        speaker.pitch_rad = base::radians(60.0);
        const auto slanted = sound::gap_of(speaker, flat);
        REQUIRE(slanted);
        check_close(slanted->along_m, 2.0, absolute(1e-12, "1/cos 60"));
        check_close(slanted->incidence_rad, base::radians(60.0), absolute(1e-12, "rounding"));
        check_close(slanted->depth_m(), 1.0, absolute(1e-12, "rounding"));
        check_close(slanted->detour_m(), 1.0, absolute(1e-12, "2 h cos 60"));
        speaker.pitch_rad = 0.0;
        speaker.yaw_rad = base::radians(180.0);
        CHECK_FALSE(sound::gap_of(speaker, flat));
    }
}
