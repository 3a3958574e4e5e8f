// SPDX-License-Identifier: MIT
// Sources, all from memory: the constant 0.161 s/m of Sabine's formula in textbooks of room
// acoustics, 55.3 / c in ISO 354:2003; Eyring 1930, as a count of reflections over the mean free
// path 4 V / S; Cauchy's mean chord, 4 V / S; Rec. ITU-R BS.1116-3 (0.25 s in 100 m3); DIN 18041
// group A2; the NC-25 curve of handbooks.
#include "base/units.hpp"
#include "sound/air_absorption.hpp"
#include "sound/decay.hpp"
#include "sound/noise_criterion.hpp"
#include "support/check.hpp"

#include <glm/geometric.hpp>

#include <cmath>
#include <random>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

const sound::Air kAir;

/// Eyring's own reasoning, reflection by reflection: after t seconds sound has met walls
/// c t S / (4 V) times and has (1 - a) of its energy left after each. Halving finds when a
/// millionth is left.
double counted_decay_s(double volume_m3, double area_m2, double absorption) {
    double short_s = 0.0, long_s = 1000.0;
    for (int i = 0; i < 200; ++i) {
        const double t = 0.5 * (short_s + long_s);
        const double met = kAir.sound_speed_m_s() * t * area_m2 / (4.0 * volume_m3);
        (std::pow(1.0 - absorption, met) > 1e-6 ? short_s : long_s) = t;
    }
    return 0.5 * (short_s + long_s);
}

double uniform(std::mt19937& random) {
    return (static_cast<double>(random()) + 0.5) / 4294967296.0;
}

/// Away from a wall whose inward normal is along `axis`, by Lambert's law.
glm::dvec3 scattered(std::mt19937& random, int axis, double inward) {
    const double turn = 2.0 * base::kPi * uniform(random);
    const double sine_squared = uniform(random);
    glm::dvec3 out{0.0};
    out[axis] = inward * std::sqrt(1.0 - sine_squared);
    out[(axis + 1) % 3] = std::sqrt(sine_squared) * std::cos(turn);
    out[(axis + 2) % 3] = std::sqrt(sine_squared) * std::sin(turn);
    return out;
}

/// Mean way between two walls of a box whose walls scatter.
double traced_free_path_m(const glm::dvec3& sides, int reflections) {
    std::mt19937 random(97);
    glm::dvec3 at = 0.5 * sides;
    glm::dvec3 way = glm::normalize(glm::dvec3{0.3, 0.5, 0.7});
    double total = 0.0;
    for (int i = 0; i < reflections; ++i) {
        int axis = 0;
        double least = 1e9;
        for (int k = 0; k < 3; ++k) {
            const double d = ((way[k] > 0.0 ? sides[k] : 0.0) - at[k]) / way[k];
            if (way[k] != 0.0 && d < least) {
                least = d;
                axis = k;
            }
        }
        at += least * way;
        if (i > 0) total += least;
        const double inward = way[axis] > 0.0 ? -1.0 : 1.0;
        at[axis] = inward < 0.0 ? sides[axis] : 0.0;
        way = scattered(random, axis, inward);
    }
    return total / (reflections - 1);
}

}  // namespace

TEST_SUITE("outside/sabine_eyring") {
    TEST_CASE("golden: T = 0.161 V / A at 20 degC, and 55.3 V / (c A)") {
        check_close(sound::sabine_s(1.0, 1.0, 0.0, kAir), 0.161, printed_digits(3));
        check_close(sound::sabine_s(1.0, 1.0, 0.0, kAir) * kAir.sound_speed_m_s(), 55.3,
                    printed_digits(1));
        // A hall of 3000 m3 with 300 m2 of absorption area: 1.61 s, as 0.161 has it.
        check_close(sound::sabine_s(3000.0, 300.0, 0.0, kAir), 1.61, printed_digits(2));
    }

    TEST_CASE("golden: Eyring is the count of reflections over the mean free path") {
        for (const double a : {0.05, 0.2, 0.5, 0.8, 0.95}) {
            INFO("absorption ", a);
            check_close(sound::eyring_s(2000.0, 1100.0, a, 0.0, kAir),
                        counted_decay_s(2000.0, 1100.0, a),
                        relative(1e-9, "halving to the last bit of a power"));
        }
        // At a = 0.5 the textbooks' ratio to Sabine is 0.5 / ln 2 = 0.721.
        check_close(sound::eyring_s(2000.0, 1100.0, 0.5, 0.0, kAir) /
                        sound::sabine_s(2000.0, 550.0, 0.0, kAir),
                    0.721, printed_digits(3));
    }

    TEST_CASE("golden: the mean way between two walls is 4 V / S") {
        for (const glm::dvec3 sides : {glm::dvec3{10, 5, 20}, {6.2, 3.3, 9.4}, {8, 8, 8}}) {
            const double volume = sides.x * sides.y * sides.z;
            const double area = 2.0 * (sides.x * sides.y + sides.y * sides.z + sides.z * sides.x);
            check_close(traced_free_path_m(sides, 200000), 4.0 * volume / area,
                        relative(0.01,
                                 "200 000 random ways that scatter by about half their mean: "
                                 "0.1 % a standard deviation, and neighbours correlate"));
        }
    }

    TEST_CASE("golden: Eyring becomes Sabine where little is absorbed, and ends where all is") {
        for (const double a : {1e-3, 1e-5, 1e-7}) {
            // The series -ln(1 - a) = a + a^2/2 + ...: apart by half of a.
            check_close(sound::eyring_s(2000.0, 1100.0, a, 0.0, kAir) /
                            sound::sabine_s(2000.0, 1100.0 * a, 0.0, kAir),
                        1.0 - 0.5 * a, absolute(a * a, "next term of the series"));
        }
        double before = 1e9;
        for (const double a : {0.9, 0.99, 0.999999, 1.0 - 1e-15}) {
            const double t = sound::eyring_s(2000.0, 1100.0, a, 0.0, kAir);
            CHECK(t < before);
            before = t;
        }
        CHECK(before < 0.02);
        CHECK(sound::eyring_s(2000.0, 1100.0, 1.0, 0.0, kAir) == 0.0);
    }

    TEST_CASE("golden: in a hall of mirrors the air alone ends the sound, after 60 dB of it") {
        for (const double hz : {125.0, 1000.0, 4000.0}) {
            const double metres = 60.0 / sound::air_absorption_db_per_m(hz, kAir);
            const double air_m2 = sound::air_absorption_m2(2000.0, hz, kAir);
            check_close(sound::sabine_s(2000.0, 0.0, air_m2, kAir), metres / kAir.sound_speed_m_s(),
                        relative(1e-12, "rounding"));
        }
        // ISO 9613-1 as worked in iso_9613_air_test: 29.67 dB/km at 4 kHz are 0.0273 / m.
        check_close(sound::air_absorption_m2(1.0, 4000.0, kAir), 0.0273, printed_digits(4));
    }

    TEST_CASE("golden: recommended decay times") {
        check_close(sound::listening_decay_s(100.0), 0.25, printed_digits(2));
        check_close(sound::listening_decay_s(800.0), 0.50, printed_digits(2));
        check_close(sound::speech_decay_s(1000.0).value(), 0.97, printed_digits(2));
    }

    TEST_CASE("golden: NC-25 and NC-30, octave by octave") {
        const double bands[] = {63, 125, 250, 500, 1000, 2000, 4000, 8000};
        const double nc25[] = {54, 44, 37, 31, 27, 24, 22, 21};
        const double nc30[] = {57, 48, 41, 35, 31, 29, 28, 27};
        for (std::size_t i = 0; i < std::size(bands); ++i) {
            check_close(sound::noise_criterion_db(25, bands[i]).value(), nc25[i],
                        printed_digits(0));
            check_close(sound::noise_criterion_db(30, bands[i]).value(), nc30[i],
                        printed_digits(0));
        }
    }

    TEST_CASE("golden: the critical distance is 0.057 (V / T)^(1/2)") {
        // r = (A / (16 pi))^(1/2) is 0.057 (V / T)^(1/2) in the handbooks, from memory.
        sound::DecayBand band;
        band.surfaces_m2 = 300.0;
        const double decay = sound::sabine_s(3000.0, 300.0, 0.0, kAir);
        check_close(sound::critical_distance_m(band) / std::sqrt(3000.0 / decay), 0.057,
                    printed_digits(3));
    }
}
