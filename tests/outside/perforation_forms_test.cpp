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
        sheet.interaction = sound::HoleInteraction::none;
        for (const LossRow& row :
             {LossRow{1000, 0.30}, LossRow{2000, 1.10}, LossRow{4000, 3.33}, LossRow{6000, 5.56},
              LossRow{8000, 7.49}, LossRow{10000, 9.14}, LossRow{16000, 12.89}}) {
            INFO(row.frequency_hz, " Hz");
            const double ours = our_loss_db(sheet, row.frequency_hz);
            CHECK(ours > row.loss_db - 0.005);
            CHECK(ours < row.loss_db + 0.30);
        }
    }

    TEST_CASE("golden: Fok's factor in both conventions of its argument") {
        check_close(sound::fok_factor(1.2, 5.013), 0.6674, printed_digits(4));
        check_close(sound::fok_factor(std::sqrt(0.045), 1.0), 0.7043, printed_digits(4));
    }
}
