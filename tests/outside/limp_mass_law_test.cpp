// SPDX-License-Identifier: MIT
// Source: the mass law of building acoustics at normal incidence, TL = 20 lg(f m) - 42.4 dB with f
// in Hz and m in kg/m2 (handbook form, from memory: texts print 42 to 43). It leaves out the 1
// under the root, so it holds from some 6 dB up.
#include "sound/perforation.hpp"
#include "support/check.hpp"

#include <cmath>

using namespace rakeline;
using namespace rakeline::tests;

namespace {

double our_loss_db(double mass_kg_m2, double frequency_hz) {
    sound::Sheet sheet;
    sheet.perforation.pattern = room::PerforationPattern::none;
    sheet.mass_kg_m2 = mass_kg_m2;
    return sound::screen_loss_db(sheet, frequency_hz, 0.0, sound::Air{});
}

}  // namespace

TEST_SUITE("outside/limp_mass_law") {
    TEST_CASE("golden: worked cases of the mass law") {
        struct MassRow {
            double mass_kg_m2;
            double frequency_hz;
            double loss_db;
        };
        for (const MassRow& row : {MassRow{10.0, 500.0, 31.58}, MassRow{10.0, 1000.0, 37.60},
                                   MassRow{5.0, 250.0, 19.54}, MassRow{1.0, 4000.0, 29.64}}) {
            INFO(row.mass_kg_m2, " kg/m2 at ", row.frequency_hz, " Hz");
            check_close(our_loss_db(row.mass_kg_m2, row.frequency_hz), row.loss_db,
                        absolute(0.1, "constant rounded to 0.05, up to 0.05 of the 1 left out"));
        }
    }

    TEST_CASE("golden: doubling the mass or the frequency adds 6 dB") {
        check_close(our_loss_db(20.0, 1000.0) - our_loss_db(10.0, 1000.0), 6.02,
                    absolute(0.01, "the 1 left out"));
        check_close(our_loss_db(10.0, 2000.0) - our_loss_db(10.0, 1000.0), 6.02,
                    absolute(0.01, "the 1 left out"));
    }
}
