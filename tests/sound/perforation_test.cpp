// SPDX-License-Identifier: MIT
#include "sound/perforation.hpp"

#include "base/units.hpp"
#include "room/perforation.hpp"
#include "sound/random_sheet.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>

using namespace rakeline;
using room::PerforationPattern;
using sound::Air;
using sound::screen_loss_db;
using sound::Sheet;
using tests::absolute;
using tests::between;
using tests::check_close;
using tests::printed_digits;
using tests::random_cinema_sheet;
using tests::random_sheet;
using tests::relative;

namespace {

const Air kAir;

Sheet closed_sheet(double mass_kg_m2) {
    Sheet sheet;
    sheet.perforation.pattern = PerforationPattern::none;
    sheet.mass_kg_m2 = mass_kg_m2;
    return sheet;
}

/// 10 lg (1 + (w m cos / 2 rho c)^2), written out with its own constants of air.
double mass_law_db(double mass_kg_m2, double frequency_hz, double angle_rad) {
    const double rho_c = 101325.0 / (287.05 * 293.15) * 343.2;
    const double x = base::kPi * frequency_hz * mass_kg_m2 * std::cos(angle_rad) / rho_c;
    return 10.0 * std::log10(1.0 + x * x);
}

}  // namespace

TEST_SUITE("sound/perforation") {
    TEST_CASE("a sheet without holes follows the mass law at every angle") {
        for (const double f : {63.0, 1000.0, 16000.0}) {
            for (const double angle : {0.0, 0.5, 1.2}) {
                check_close(screen_loss_db(closed_sheet(0.35), f, angle, kAir),
                            mass_law_db(0.35, f, angle), relative(1e-12, "rounding"));
            }
        }
        check_close(screen_loss_db(closed_sheet(0.35), 1000.0, 0.0, kAir), 9.1, printed_digits(1));
    }

    TEST_CASE("holes ever farther apart leave the mass law") {
        Sheet sheet;
        sheet.perforation.pattern = PerforationPattern::square;
        sheet.perforation.pitch_m = 5.0;
        check_close(screen_loss_db(sheet, 4000.0, 0.3, kAir), mass_law_db(0.35, 4000.0, 0.3),
                    absolute(1e-2, "an open area of 5e-8"));
    }

    TEST_CASE(
        "a limp sheet lets through all of a very low tone, a heavy one all but its friction") {
        Sheet sheet;
        sheet.perforation.pattern = PerforationPattern::square;
        check_close(screen_loss_db(sheet, 1e-3, 0.0, kAir), 0.0, absolute(1e-6, "tends to 0"));
        // What is left of fixed holes is the steady flow through narrow tubes, 32 eta t / d^2.
        const std::complex<double> holes = sound::hole_impedance(sheet, 1e-3, kAir);
        const double poiseuille = 32.0 * kAir.viscosity_pa_s() * sheet.thickness_m /
                                  (0.0012 * 0.0012) / room::open_area(sheet.perforation);
        check_close(holes.real(), poiseuille, relative(0.01, "surface resistance at 1 mHz"));
    }

    TEST_CASE("wide holes of a thick plate hold the mass of the air in them") {
        Sheet sheet;
        sheet.perforation = {PerforationPattern::square, 0.01, 0.02};
        sheet.thickness_m = 0.2;
        const double f = 10000.0;
        const double sigma = room::open_area(sheet.perforation);
        const double mass_only = 2.0 * base::kPi * f * kAir.density_kg_m3() * 0.2 / sigma;
        check_close(sound::hole_impedance(sheet, f, kAir).imag(), mass_only,
                    relative(0.04, "the ends add 0.85 d of 200 mm, the walls 1 %"));
    }

    TEST_CASE("holes far apart do not know of each other, touching ones move as one") {
        check_close(sound::fok_factor(1e-3, 1.0), 1.0, absolute(2e-3, "1.4 d/b"));
        CHECK(sound::fok_factor(1e-3, 1e-3) == 0.0);
        check_close(sound::fok_factor(1.2e-3, 5.013e-3), 0.667, printed_digits(3));
        double before = 1.0;
        for (double pitch = 100.0; pitch >= 1.0; pitch *= 0.97) {
            const double now = sound::fok_factor(1.0, pitch);
            CHECK(now <= before);
            CHECK(now >= 0.0);
            before = now;
        }
    }

    TEST_CASE("interaction between holes lowers the loss") {
        Sheet alone;
        alone.perforation.pattern = PerforationPattern::staggered;
        Sheet together = alone;
        alone.form.interaction = sound::HoleInteraction::none;
        CHECK(screen_loss_db(together, 10000.0, 0.0, kAir) <
              screen_loss_db(alone, 10000.0, 0.0, kAir) - 1.0);
    }

    TEST_CASE("property: no sheet gives out more sound than it gets") {
        std::mt19937 random(20260301);
        for (int i = 0; i < 2000; ++i) {
            INFO("draw ", i, " of seed 20260301");
            const Sheet sheet = random_sheet(random);
            const double f = tests::random_frequency(random);
            const double angle = between(random, 0.0, 0.5 * base::kPi);
            CHECK(sound::sheet_impedance(sheet, f, kAir).real() >= 0.0);
            const double loss = screen_loss_db(sheet, f, angle, kAir);
            CHECK(loss >= 0.0);
            CHECK(std::isfinite(loss));
        }
    }

    TEST_CASE("property: what falls on a sheet goes through, comes back or is lost in friction") {
        std::mt19937 random(20260304);
        for (int i = 0; i < 3000; ++i) {
            INFO("draw ", i, " of seed 20260304");
            const Sheet sheet = random_sheet(random);
            const double f = tests::random_frequency(random);
            const double angle = between(random, 0.0, base::radians(89.0));
            const auto x = sound::relative_impedance(sheet, f, kAir);
            const auto shares = sound::energy_shares(x, std::cos(angle));
            check_close(shares.transmitted + shares.reflected + shares.absorbed, 1.0,
                        absolute(1e-12, "rounding: the absorbed share is worked from friction"));
            CHECK(shares.absorbed >= 0.0);
            check_close(-10.0 * std::log10(shares.transmitted),
                        screen_loss_db(sheet, f, angle, kAir), absolute(1e-9, "rounding"));
        }
    }

    TEST_CASE("property: straight on is angle 0, and no sheet loses more at an angle") {
        std::mt19937 random(20260305);
        for (int i = 0; i < 1000; ++i) {
            INFO("draw ", i, " of seed 20260305");
            const Sheet sheet = random_sheet(random);
            const double f = tests::random_frequency(random);
            const auto z = sound::sheet_impedance(sheet, f, kAir);
            const double rho_c = kAir.density_kg_m3() * kAir.sound_speed_m_s();
            double before = screen_loss_db(sheet, f, 0.0, kAir);
            check_close(before, 20.0 * std::log10(std::abs(2.0 * rho_c + z) / (2.0 * rho_c)),
                        absolute(1e-11, "rounding"));
            for (double degrees = 15.0; degrees <= 75.0; degrees += 15.0) {
                const double now = screen_loss_db(sheet, f, base::radians(degrees), kAir);
                CHECK(now <= before);
                before = now;
            }
        }
    }

    TEST_CASE("property: of a sheet that hardly moves, thickness and pitch only add") {
        std::mt19937 random(20260306);
        for (int i = 0; i < 1000; ++i) {
            INFO("draw ", i, " of seed 20260306");
            Sheet sheet = random_sheet(random);
            sheet.mass_kg_m2 = 1e5;
            const double f = tests::random_frequency(random);
            const double loss = screen_loss_db(sheet, f, 0.0, kAir);
            Sheet thick = sheet;
            thick.thickness_m *= between(random, 1.05, 3.0);
            CHECK(screen_loss_db(thick, f, 0.0, kAir) > loss);
            Sheet sparse = sheet;
            sparse.perforation.pitch_m *= between(random, 1.05, 3.0);
            CHECK(screen_loss_db(sparse, f, 0.0, kAir) > loss);
        }
    }

    TEST_CASE("property: losses vanish in the bass, with any holes and any hung mass") {
        std::mt19937 random(20260307);
        for (int i = 0; i < 500; ++i) {
            INFO("draw ", i, " of seed 20260307");
            const Sheet sheet = random_sheet(random);
            check_close(
                screen_loss_db(sheet, 1e-4, 0.0, kAir), 0.0,
                absolute(1e-3, "10 kg/m2 at 0.1 mHz lose 3e-7 dB, friction less than that"));
        }
    }

    TEST_CASE("a woven sheet takes round holes of its openings' side") {
        Sheet woven;
        woven.perforation = {PerforationPattern::woven, 0.0003, 0.0012, 0.0};
        Sheet square = woven;
        square.perforation.pattern = PerforationPattern::square;
        const double area = (4.0 / base::kPi);  // a square's over a round hole's
        const auto of_woven = sound::hole_impedance(woven, 2000.0, kAir);
        const auto of_square = sound::hole_impedance(square, 2000.0, kAir);
        check_close(std::abs(of_square / of_woven - area), 0.0, absolute(1e-12, "rounding"));
    }

    TEST_CASE("the screen's sheet is what the layout says of it") {
        room::Screen screen;
        screen.perforation = {PerforationPattern::woven, 0.0004, 0.001, 0.1};
        screen.sheet_thickness_m = 0.0007;
        screen.sheet_mass_kg_m2 = 0.6;
        screen.loss_table = {{100.0, 1.0}, {1000.0, 2.0}};
        const Sheet sheet = sound::sheet_of(screen);
        CHECK(sheet.perforation == screen.perforation);
        CHECK(sheet.thickness_m == 0.0007);
        CHECK(sheet.mass_kg_m2 == 0.6);
        CHECK(sheet.loss_table == screen.loss_table);
        CHECK(sheet.form == sound::SheetForm{});
    }

    TEST_CASE("property: a heavier sheet loses more, whatever its holes") {
        std::mt19937 random(20260302);
        for (int i = 0; i < 1000; ++i) {
            INFO("draw ", i, " of seed 20260302");
            const Sheet light = random_sheet(random);
            Sheet heavy = light;
            heavy.mass_kg_m2 *= between(random, 1.05, 3.0);
            const double f = between(random, 50.0, 16000.0);
            CHECK(screen_loss_db(heavy, f, 0.0, kAir) > screen_loss_db(light, f, 0.0, kAir));
        }
    }

    TEST_CASE(
        "property: a cinema sheet loses more when thicker, with holes farther apart, and in "
        "the treble") {
        std::mt19937 random(20260303);
        for (int i = 0; i < 1000; ++i) {
            INFO("draw ", i, " of seed 20260303");
            const Sheet sheet = random_cinema_sheet(random);
            const double f = between(random, 500.0, 16000.0);
            const double loss = screen_loss_db(sheet, f, 0.0, kAir);
            Sheet thick = sheet;
            thick.thickness_m *= between(random, 1.05, 3.0);
            CHECK(screen_loss_db(thick, f, 0.0, kAir) > loss);
            Sheet sparse = sheet;
            sparse.perforation.pitch_m *= between(random, 1.05, 3.0);
            CHECK(screen_loss_db(sparse, f, 0.0, kAir) > loss);
            CHECK(screen_loss_db(sheet, f * 1.1, 0.0, kAir) > loss);
            CHECK(screen_loss_db(sheet, f, 0.8, kAir) < loss);
        }
    }

    TEST_CASE("a hole is a minute of arc wide where its distance says so") {
        const double distance = sound::hole_visible_from_m(0.0012);
        check_close(std::atan(0.0012 / distance), base::radians(1.0 / 60.0),
                    relative(1e-12, "rounding"));
        check_close(sound::hole_visible_from_m(0.0006), 0.5 * distance,
                    relative(1e-14, "rounding"));
    }
}
