// SPDX-License-Identifier: MIT
#include "sound/decay.hpp"

#include "sound/hall_room.hpp"
#include "sound/noise_criterion.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

const sound::Air kAir;
const Tolerance kRounding = relative(1e-12, "rounding of some products");

auto decay_of(const sound::HallInput& hall) {
    return sound::decay_bands(hall.surfaces, hall.acoustics, kAir);
}

}  // namespace

TEST_SUITE("sound/decay") {
    TEST_CASE("the absorption area is every surface by its own coefficient") {
        sound::HallInput hall = box_hall(10.0, 5.0, 20.0);
        hall.surfaces.seated_floor_m2 = 120.0;
        hall.surfaces.bare_floor_m2 = 80.0;
        room::Acoustics& a = hall.acoustics;
        a = evenly(0.0);
        a.screen_wall = alike(0.9);
        a.side_walls = alike(0.5);
        a.rear_wall = alike(0.8);
        a.ceiling = alike(0.3);
        a.floor = alike(0.1);
        a.seats = alike(0.4);
        a.audience = alike(0.8);
        a.taken_fraction = 0.25;
        // By hand: 50*0.9 + 200*0.5 + 50*0.8 + 200*0.3 + 80*0.1 + 120*(0.25*0.8 + 0.75*0.4).
        const double expected = 45.0 + 100.0 + 40.0 + 60.0 + 8.0 + 120.0 * 0.5;
        for (const sound::DecayBand& band : decay_of(hall)) {
            check_close(band.surfaces_m2, expected, kRounding);
            check_close(band.mean_absorption, expected / 700.0, kRounding);
        }
    }

    TEST_CASE("each band has the coefficients of its own octave") {
        sound::HallInput hall = box_hall(10.0, 5.0, 20.0);
        hall.acoustics = evenly(0.5);
        hall.acoustics.ceiling.by_octave = {0.1, 0.2, 0.3, 0.4, 0.6, 0.7};
        const auto bands = decay_of(hall);
        for (std::size_t i = 1; i < bands.size(); ++i) {
            CHECK(bands[i].frequency_hz == 2.0 * bands[i - 1].frequency_hz);
            CHECK(bands[i].surfaces_m2 > bands[i - 1].surfaces_m2);
        }
    }

    TEST_CASE("property: more absorption never lengthens the decay, by either formula") {
        std::mt19937 random(611);
        for (int round = 0; round < 200; ++round) {
            sound::HallInput hall = random_hall(random);
            const auto before = decay_of(hall);
            const std::size_t band = random() % before.size();
            room::OctaveAbsorption* const surfaces[] = {
                &hall.acoustics.screen_wall, &hall.acoustics.side_walls, &hall.acoustics.rear_wall,
                &hall.acoustics.ceiling,     &hall.acoustics.floor,      &hall.acoustics.seats,
                &hall.acoustics.audience};
            surfaces[random() % std::size(surfaces)]->by_octave[band] += 0.04;
            const auto after = decay_of(hall);
            INFO("round ", round, ", band ", band);
            CHECK(after[band].sabine_s <= before[band].sabine_s);
            CHECK(after[band].eyring_s <= before[band].eyring_s);
            CHECK(after[(band + 1) % 6] == before[(band + 1) % 6]);
        }
    }

    TEST_CASE("property: Eyring is never longer than Sabine, and both are finite and positive") {
        std::mt19937 random(612);
        for (int round = 0; round < 200; ++round) {
            for (const sound::DecayBand& band : decay_of(random_hall(random))) {
                CHECK(band.eyring_s > 0.0);
                CHECK(band.eyring_s <= band.sabine_s);
                CHECK(std::isfinite(band.sabine_s));
                CHECK(band.air_m2 > 0.0);
            }
        }
    }

    TEST_CASE("property: a hall that is the same only larger lingers longer in proportion") {
        std::mt19937 random(613);
        for (int round = 0; round < 50; ++round) {
            const double volume = between(random, 50.0, 9000.0);
            const double area = between(random, 6.0, 12.0) * std::pow(volume, 2.0 / 3.0);
            const double a = between(random, 0.05, 0.9);
            const double scale = between(random, 0.3, 4.0);
            // Without air, which does not scale with the hall.
            check_close(
                sound::eyring_s(volume * scale * scale * scale, area * scale * scale, a, 0.0, kAir),
                scale * sound::eyring_s(volume, area, a, 0.0, kAir), kRounding);
            check_close(sound::sabine_s(volume * scale * scale * scale, area * scale * scale * a,
                                        0.0, kAir),
                        scale * sound::sabine_s(volume, area * a, 0.0, kAir), kRounding);
        }
    }

    TEST_CASE("a seated floor that takes more than falls on it leaves no decay, not a negative") {
        sound::HallInput hall = box_hall(10.0, 5.0, 20.0);
        hall.acoustics = evenly(1.0);
        for (const sound::DecayBand& band : decay_of(hall)) {
            CHECK(band.eyring_s == 0.0);
            CHECK(band.sabine_s > 0.0);
        }
        CHECK(sound::eyring_s(100.0, 130.0, 1.2, 0.0, kAir) == 0.0);
    }

    TEST_CASE("the recommended range grows with the volume and has an end below") {
        double least = 0.0, most = 0.0;
        for (const double volume : {30.0, 100.0, 300.0, 1000.0, 3000.0, 10000.0}) {
            CHECK(sound::listening_decay_s(volume) > least);
            CHECK(sound::speech_decay_s(volume).value() > most);
            least = sound::listening_decay_s(volume);
            most = sound::speech_decay_s(volume).value();
            CHECK(least < most);
        }
        CHECK_FALSE(sound::speech_decay_s(29.9));
    }

    TEST_CASE("noise criterion curves rise with their number and fall with the frequency") {
        for (int nc = 15; nc <= 50; ++nc) {
            double before = 1000.0;
            for (const double hz : {63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0, 8000.0}) {
                const double level = sound::noise_criterion_db(nc, hz).value();
                CHECK(level < before);
                before = level;
                if (nc > 15) CHECK(level > sound::noise_criterion_db(nc - 1, hz).value());
            }
        }
        CHECK_FALSE(sound::noise_criterion_db(25, 16000.0));
        // Half-way between NC-25 and NC-30 there would be 29 dB; at NC-27 two fifths of the way.
        check_close(sound::noise_criterion_db(27, 1000.0).value(), 27.0 + 0.4 * 4.0, kRounding);
    }
}
