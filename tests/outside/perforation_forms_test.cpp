// SPDX-License-Identifier: MIT
// Source: losses worked from Maa's approximate impedance of a micro-perforated sheet (mass term
// with 1/sqrt(9 + k^2/2), end resistance sqrt(2)/32) with Fok's hole interaction on the end mass,
// Fok's coefficients from memory. Ours takes the tube's exact Bessel form in place of Maa's fit to
// it.
#include "base/units.hpp"
#include "sound/perforation.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// 0.3 mm thick, square pattern, too heavy to move.
sound::Sheet sheet_of(double diameter_m, double open_fraction) {
    sound::Sheet sheet;
    sheet.perforation.pattern = room::PerforationPattern::square;
    sheet.perforation.hole_diameter_m = diameter_m;
    sheet.perforation.pitch_m = diameter_m * std::sqrt(base::kPi / (4.0 * open_fraction));
    sheet.thickness_m = 0.0003;
    sheet.mass_kg_m2 = 1e6;
    return sheet;
}

struct LossRow {
    double frequency_hz;
    double loss_db;
};

double our_loss_db(const sound::Sheet& sheet, double frequency_hz) {
    return sound::screen_loss_db(sheet, frequency_hz, 0.0, sound::Air{});
}

const auto kFormsDiffer =
    absolute(0.03, "Maa's fit lies up to 0.025 dB from the exact tube; 0.005 dB of rounding");

}  // namespace

TEST_SUITE("outside/perforation_forms") {
    TEST_CASE("golden: a usual screen, holes of 1.2 mm, 4.5 % open") {
        const sound::Sheet sheet = sheet_of(0.0012, 0.045);
        for (const LossRow& row :
             {LossRow{1000, 0.30}, LossRow{2000, 0.82}, LossRow{4000, 2.35}, LossRow{6000, 4.06},
              LossRow{8000, 5.67}, LossRow{10000, 7.13}, LossRow{16000, 10.60}}) {
            INFO(row.frequency_hz, " Hz");
            check_close(our_loss_db(sheet, row.frequency_hz), row.loss_db, kFormsDiffer);
        }
    }

    TEST_CASE("golden: a screen of small holes, 0.5 mm, 5 % open") {
        const sound::Sheet sheet = sheet_of(0.0005, 0.05);
        for (const LossRow& row : {LossRow{1000, 0.30}, LossRow{4000, 1.14}, LossRow{8000, 2.82},
                                   LossRow{10000, 3.73}, LossRow{16000, 6.27}}) {
            INFO(row.frequency_hz, " Hz");
            check_close(our_loss_db(sheet, row.frequency_hz), row.loss_db, kFormsDiffer);
        }
    }

    TEST_CASE("golden: friction only adds to the plain mass of air in holes that do not interact") {
        // Series mass after Ingard (1953), 10 lg (1 + (k le / 2)^2), le = (t + 0.85 d)/sigma.
        sound::Sheet sheet = sheet_of(0.0012, 0.045);
        sheet.form.interaction = sound::HoleInteraction::none;
        for (const LossRow& row :
             {LossRow{1000, 0.30}, LossRow{2000, 1.10}, LossRow{4000, 3.33}, LossRow{6000, 5.56},
              LossRow{8000, 7.49}, LossRow{10000, 9.14}, LossRow{16000, 12.89}}) {
            INFO(row.frequency_hz, " Hz");
            const double ours = our_loss_db(sheet, row.frequency_hz);
            CHECK(ours > row.loss_db - 0.005);
            CHECK(ours < row.loss_db + 0.30);
        }
    }

    TEST_CASE("golden: Maa's form of the tube gives the worked losses themselves") {
        sound::Sheet usual = sheet_of(0.0012, 0.045);
        usual.form.tube = sound::TubeForm::maa;
        sound::Sheet fine = sheet_of(0.0005, 0.05);
        fine.form.tube = sound::TubeForm::maa;
        const auto rounded = absolute(0.007, "0.005 of rounding, air of another text");
        for (const LossRow& row :
             {LossRow{1000, 0.30}, LossRow{2000, 0.82}, LossRow{4000, 2.35}, LossRow{6000, 4.06},
              LossRow{8000, 5.67}, LossRow{10000, 7.13}, LossRow{16000, 10.60}})
            check_close(our_loss_db(usual, row.frequency_hz), row.loss_db, rounded);
        for (const LossRow& row : {LossRow{1000, 0.30}, LossRow{4000, 1.14}, LossRow{8000, 2.82},
                                   LossRow{10000, 3.73}, LossRow{16000, 6.27}})
            check_close(our_loss_db(fine, row.frequency_hz), row.loss_db, rounded);
    }

    TEST_CASE("golden: Maa's approximation keeps within 6 % of the exact tube") {
        // Maa (1998) gives this for the approximation, from memory.
        sound::Sheet exact = sheet_of(0.0005, 0.05);
        sound::Sheet close = exact;
        close.form.tube = sound::TubeForm::maa;
        const sound::Air air;
        for (double f = 1.0; f < 2e5; f *= 1.3) {
            INFO(f, " Hz");
            const auto a = sound::hole_impedance(exact, f, air);
            const auto b = sound::hole_impedance(close, f, air);
            CHECK(std::abs(b.real() - a.real()) < 0.06 * a.real());
            CHECK(std::abs(b.imag() - a.imag()) < 0.06 * a.imag());
        }
    }

    TEST_CASE("golden: other published factors of hole interaction, as worked") {
        // Ingard's form, mass of the air alone: (t + 0.85 d g)/sigma = 22.367 mm.
        const double g =
            sound::interaction_factor(sound::HoleInteraction::ingard, 0.0012, 0.005013, 0.045);
        check_close(1000.0 * (0.0003 + 0.85 * 0.0012 * g) / 0.045, 22.367, printed_digits(3));
        const double by_area =
            sound::interaction_factor(sound::HoleInteraction::fok_by_area, 0.0012, 0.005013, 0.045);
        check_close(1000.0 * (0.0003 + 0.85 * 0.0012 * by_area) / 0.045, 22.631, printed_digits(3));
        CHECK(sound::interaction_factor(sound::HoleInteraction::none, 0.0012, 0.005, 0.045) == 1.0);
    }

    TEST_CASE("golden: the fourfold end term is sqrt(2)/8 where the single one is sqrt(2)/32") {
        // Maa's r = 32 eta t/(s d^2) [... + c k d/t], k = d sqrt(w rho/(4 eta)), as a difference.
        sound::Sheet once = sheet_of(0.0008, 0.05);
        sound::Sheet fourfold = once;
        fourfold.form.faces = sound::FaceResistance::fourfold;
        const sound::Air air;
        const double f = 3000.0, d = 0.0008, s = 0.05;
        const double eta = air.viscosity_pa_s();
        const double k = d * std::sqrt(2.0 * base::kPi * f * air.density_kg_m3() / (4.0 * eta));
        const double expected =
            32.0 * eta / (s * d) * k * (std::sqrt(2.0) / 8.0 - std::sqrt(2.0) / 32.0);
        const auto difference =
            sound::hole_impedance(fourfold, f, air) - sound::hole_impedance(once, f, air);
        check_close(difference.real(), expected, relative(1e-9, "rounding of a difference"));
    }

    TEST_CASE("golden: Fok's factor in both conventions of its argument") {
        check_close(sound::fok_factor(1.2, 5.013), 0.6674, printed_digits(4));
        check_close(sound::fok_factor(std::sqrt(0.045), 1.0), 0.7043, printed_digits(4));
    }
}
