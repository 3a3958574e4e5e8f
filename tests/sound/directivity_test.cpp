// SPDX-License-Identifier: MIT
#include "sound/directivity.hpp"

#include "base/units.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <cmath>
#include <random>

using namespace rakeline;
using base::radians;
using room::Loudspeaker;
using sound::directivity_db;
using tests::absolute;
using tests::check_close;
using tests::relative;

namespace {

const sound::Air kAir;

double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}

Loudspeaker horn_of(double across_deg, double up_deg) {
    Loudspeaker l;
    l.coverage_across_rad = radians(across_deg);
    l.coverage_up_rad = radians(up_deg);
    return l;
}

Loudspeaker piston_of(double radius_m) {
    Loudspeaker l;
    l.directivity = room::Directivity::piston;
    l.piston_radius_m = radius_m;
    return l;
}

/// Angles of the direction `angle` off the axis at `roll` about it.
struct AcrossUp {
    double across, up;
};
AcrossUp across_up(double angle, double roll) {
    const double x = std::sin(angle) * std::cos(roll);
    const double y = std::sin(angle) * std::sin(roll);
    return {std::atan2(x, std::cos(angle)), std::asin(y)};
}

}  // namespace

TEST_SUITE("sound/directivity") {
    TEST_CASE("the true angle off the axis joins both planes") {
        check_close(sound::off_axis(0.4, 0.0).angle_rad, 0.4, absolute(1e-15, "rounding"));
        check_close(sound::off_axis(0.0, -0.3).angle_rad, 0.3, absolute(1e-15, "rounding"));
        check_close(sound::off_axis(0.4, 0.3).angle_rad, std::acos(std::cos(0.4) * std::cos(0.3)),
                    absolute(1e-15, "rounding"));
        check_close(sound::off_axis(base::kPi, 0.0).angle_rad, base::kPi,
                    absolute(1e-15, "rounding"));
    }

    TEST_CASE("a horn is 6.02 dB down at its nominal edges from where its mouth holds them") {
        const Loudspeaker l = horn_of(90.0, 50.0);
        const double held = sound::coverage_held_from_hz(l.piston_radius_m, radians(25.0), kAir);
        const auto half_pressure = absolute(1e-9, "20 lg 2 rounded");
        for (const double f : {held, 2.0 * held, 16000.0}) {
            check_close(directivity_db(l, f, radians(45.0), 0.0, kAir), -6.0206,
                        absolute(1e-5, "5 digits"));
            check_close(directivity_db(l, f, 0.0, radians(-25.0), kAir), -20.0 * std::log10(2.0),
                        half_pressure);
        }
        CHECK(directivity_db(l, 0.5 * held, 0.0, radians(25.0), kAir) > -3.0);
    }

    TEST_CASE("the frequency that a mouth holds is where a piston of its size is 6.02 dB down") {
        for (const double half : {15.0, 30.0, 60.0}) {
            const double f = sound::coverage_held_from_hz(0.2, radians(half), kAir);
            check_close(directivity_db(piston_of(0.2), f, radians(half), 0.0, kAir),
                        -20.0 * std::log10(2.0), absolute(1e-9, "root printed to 14 digits"));
        }
    }

    TEST_CASE("a horn spreads toward all directions alike as the frequency falls") {
        const Loudspeaker l = horn_of(90.0, 40.0);
        const double across = directivity_db(l, 31.5, radians(80.0), 0.0, kAir);
        const double up = directivity_db(l, 31.5, 0.0, radians(80.0), kAir);
        CHECK(across > -0.1);
        check_close(up, across, absolute(0.02, "the two planes' own model differs by angle/sine"));
    }

    TEST_CASE("property: on the axis a loudspeaker is at its loudest, nowhere above, floored") {
        std::mt19937 random(20260401);
        for (int i = 0; i < 2000; ++i) {
            INFO("draw ", i, " of seed 20260401");
            Loudspeaker l = horn_of(between(random, 10.0, 180.0), between(random, 10.0, 180.0));
            l.piston_radius_m = between(random, 0.005, 0.6);
            if (random() % 2) l.directivity = room::Directivity::piston;
            const double f = between(random, 30.0, 16000.0);
            CHECK(directivity_db(l, f, 0.0, 0.0, kAir) == 0.0);
            const double level = directivity_db(l, f, between(random, -base::kPi, base::kPi),
                                                between(random, -1.5, 1.5), kAir);
            CHECK(level <= 0.0);
            CHECK(level >= sound::kDirectivityFloorDb);
        }
    }

    TEST_CASE("property: a horn falls without a jump along every way off its axis") {
        std::mt19937 random(20260402);
        for (int i = 0; i < 100; ++i) {
            INFO("draw ", i, " of seed 20260402");
            const Loudspeaker l =
                horn_of(between(random, 40.0, 120.0), between(random, 30.0, 120.0));
            const double f = between(random, 30.0, 16000.0);
            const double roll = between(random, 0.0, 2.0 * base::kPi);
            double before = 0.0;
            for (double angle = 0.0; angle < 3.1; angle += 0.005) {
                const AcrossUp a = across_up(angle, roll);
                const double now = directivity_db(l, f, a.across, a.up, kAir);
                CHECK(now <= before + 1e-12);
                CHECK(now > before - 0.6);
                before = now;
            }
        }
    }

    TEST_CASE("property: a higher tone is no wider") {
        const Loudspeaker l = horn_of(90.0, 50.0);
        double before = 0.0;
        for (double f = 30.0; f < 16000.0; f *= 1.05) {
            const double now = directivity_db(l, f, 0.5, 0.3, kAir);
            CHECK(now <= before);
            CHECK(now > before - 0.5);
            before = now;
        }
    }

    TEST_CASE("a piston cares for the true angle alone and fills its nulls to the floor") {
        const Loudspeaker l = piston_of(0.165);
        const AcrossUp a = across_up(0.6, 1.1);
        check_close(directivity_db(l, 2000.0, a.across, a.up, kAir),
                    directivity_db(l, 2000.0, 0.6, 0.0, kAir), absolute(1e-10, "rounding"));
        // First null at ka sin = 3.8317.
        const double ka = 2.0 * base::kPi * 4000.0 / kAir.sound_speed_m_s() * 0.165;
        const double null = std::asin(3.8317 / ka);
        CHECK(directivity_db(l, 4000.0, null, 0.0, kAir) == sound::kDirectivityFloorDb);
        CHECK(sound::piston_db(ka, null) < -80.0);
        CHECK(directivity_db(l, 4000.0, null + 0.1, 0.0, kAir) > -20.0);
    }

    TEST_CASE("behind its baffle a piston keeps the level that it has in the baffle's plane") {
        const Loudspeaker l = piston_of(0.1);
        const double in_plane = directivity_db(l, 1000.0, 0.5 * base::kPi, 0.0, kAir);
        CHECK(in_plane < -3.0);
        for (const double behind : {1.8, 2.5, base::kPi}) {
            CHECK(directivity_db(l, 1000.0, behind, 0.0, kAir) == in_plane);
        }
    }

    TEST_CASE("a piston small against the wavelength sends alike to all sides") {
        const double level = directivity_db(piston_of(0.02), 100.0, 1.5, 0.0, kAir);
        const double x = 2.0 * base::kPi * 100.0 / kAir.sound_speed_m_s() * 0.02 * std::sin(1.5);
        check_close(level, 20.0 * std::log10(1.0 - x * x / 8.0),
                    absolute(1e-6, "the series' next term"));
        CHECK(level < 0.0);
    }

    TEST_CASE(
        "a coverage table stands in place of the nominal coverage, and holds beyond its ends") {
        Loudspeaker l = horn_of(90.0, 50.0);
        l.coverage_table = {{1000.0, radians(100.0), radians(60.0)},
                            {2000.0, radians(90.0), radians(50.0)},
                            {8000.0, radians(60.0), radians(30.0)}};
        const auto edge = absolute(1e-9, "20 lg 2 rounded");
        for (const auto& point : l.coverage_table) {
            check_close(directivity_db(l, point.frequency_hz, 0.5 * point.across_rad, 0.0, kAir),
                        -20.0 * std::log10(2.0), edge);
            check_close(directivity_db(l, point.frequency_hz, 0.0, 0.5 * point.up_rad, kAir),
                        -20.0 * std::log10(2.0), edge);
        }
        check_close(directivity_db(l, 63.0, radians(50.0), 0.0, kAir), -20.0 * std::log10(2.0),
                    edge);
        check_close(directivity_db(l, 16000.0, radians(30.0), 0.0, kAir), -20.0 * std::log10(2.0),
                    edge);
        // A piston has no use for it.
        l.directivity = room::Directivity::piston;
        Loudspeaker bare = l;
        bare.coverage_table.clear();
        CHECK(directivity_db(l, 2000.0, 0.5, 0.2, kAir) ==
              directivity_db(bare, 2000.0, 0.5, 0.2, kAir));
    }

    TEST_CASE("property: between two octaves of its table a coverage stays between theirs") {
        std::mt19937 random(20260405);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 20260405");
            Loudspeaker l = horn_of(90.0, 50.0);
            for (double f = 250.0; f < 10000.0; f *= 2.0)
                l.coverage_table.push_back(
                    {f, between(random, 0.2, 3.1), between(random, 0.2, 3.1)});
            for (std::size_t k = 1; k < l.coverage_table.size(); ++k) {
                const room::CoveragePoint& a = l.coverage_table[k - 1];
                const room::CoveragePoint& b = l.coverage_table[k];
                const double f = a.frequency_hz * std::exp2(between(random, 0.0, 1.0));
                const auto at = sound::coverage_at(l, f, kAir).value();
                CHECK(at.across_rad >= std::min(a.across_rad, b.across_rad) - 1e-12);
                CHECK(at.across_rad <= std::max(a.across_rad, b.across_rad) + 1e-12);
                CHECK(at.up_rad >= std::min(a.up_rad, b.up_rad) - 1e-12);
                CHECK(at.up_rad <= std::max(a.up_rad, b.up_rad) + 1e-12);
            }
        }
    }

    TEST_CASE("a table of one octave holds everywhere") {
        Loudspeaker l = horn_of(90.0, 50.0);
        l.coverage_table = {{1000.0, radians(70.0), radians(40.0)}};
        for (const double f : {63.0, 1000.0, 16000.0})
            CHECK(sound::coverage_at(l, f, kAir).value().across_rad == radians(70.0));
    }

    TEST_CASE("coverage is where the level has fallen by 6.02 dB, and nowhere for a small piston") {
        const Loudspeaker piston = piston_of(0.165);
        const double half = 0.5 * sound::coverage_at(piston, 2000.0, kAir).value().across_rad;
        check_close(directivity_db(piston, 2000.0, half, 0.0, kAir), -20.0 * std::log10(2.0),
                    absolute(1e-9, "root printed to 14 digits"));
        CHECK_FALSE(sound::coverage_at(piston, 500.0, kAir));
    }

    TEST_CASE("property: the direction from a way is the direction from its angles") {
        std::mt19937 random(20260406);
        for (int i = 0; i < 500; ++i) {
            const double across = between(random, -3.1, 3.1);
            const double up = between(random, -1.5, 1.5);
            const double far = between(random, 0.1, 30.0);
            const auto a = sound::off_axis(across, up);
            const auto b =
                sound::off_axis_of(far * glm::dvec3(std::sin(across) * std::cos(up), std::sin(up),
                                                    std::cos(across) * std::cos(up)));
            const auto rounding = absolute(1e-9, "rounding, the sine flat near a quarter turn");
            check_close(a.angle_rad, b.angle_rad, rounding);
            check_close(a.across_share, b.across_share, rounding);
            check_close(a.sine, b.sine, rounding);
            check_close(a.across_share + a.up_share, 1.0, rounding);
        }
    }
}
